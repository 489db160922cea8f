import { faceOf } from '../../games/face.ts';
import { DuelStrip } from './DuelStrip.tsx';
import { faceView } from './faceView.ts';
import { GroupStrip } from './GroupStrip.tsx';
import { useSaved, type Together } from './useTogether.ts';

/** What must be seen before the shot, over the whole width: whose turn it is, the opponent, a ball that counts double. */
export function CourtStrip({ round, others }: Together) {
  const saved = useSaved(round);
  // The next shot is announced at once; what was shot counts when it is saved.
  const face = faceOf(round, others);
  const savedFace = faceOf(saved.round, saved.others);
  const duel = savedFace?.game.family === 'duel' ? savedFace.game : null;
  const loud = face ? faceView(face).loud : null;
  if (!duel && !loud && !round.group) return null;
  return (
    <div className="court-strips">
      {duel && face?.game.family === 'duel' ? (
        <DuelStrip round={round} others={others} game={duel} turn={face.game.turn} />
      ) : null}
      {round.group && !duel ? <GroupStrip round={round} others={others} /> : null}
      {loud ? (
        <p className={loud.strong ? 'court-strip loud strong' : 'court-strip loud'} role="status">
          {loud.words}
        </p>
      ) : null}
    </div>
  );
}
