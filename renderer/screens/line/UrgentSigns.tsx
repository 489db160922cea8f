const SIGNS = [
  'new trouble with bladder or bowels',
  'numbness between the legs',
  'a leg that gets weaker, or a walk that changes',
  'a hard fall or blow not long ago',
  'fever, or feeling ill with the pain',
  'pain at night that never lets up',
  'weight lost without a reason',
  'cancer, now or earlier',
  'steroid tablets for long, or brittle bones',
  'a weakened immune system, or drugs by needle',
] as const;

/** When a sore back is no matter of training any more. */
export function UrgentSigns() {
  return (
    <details className="fold">
      <summary>Signs that cannot wait</summary>
      <p>With pain in the back, any of these means a doctor without delay, and no shot before:</p>
      <ul>
        {SIGNS.map((sign) => (
          <li key={sign}>{sign}</li>
        ))}
      </ul>
      <p>
        Under 20, a back that keeps hurting belongs to a doctor as well. Pain in the chest, fainting or hard
        breathing: the emergency number of where you are.
      </p>
      <p className="quiet">
        The signs at the back are those of public guidance for health workers (NHS Greater Glasgow and Clyde;
        NHS Gloucestershire). The rest is common practice. This list is not complete, and no app can tell you
        that you are well.
      </p>
    </details>
  );
}
