/* The plain sentences for whatever can be wrong with the log. */

interface Words {
  readonly title: string;
  readonly what: string;
  readonly todo: string;
}

const BROKEN: Words = {
  title: 'The records could not be reached',
  what: 'Something in this browser failed while your records were being read or written.',
  todo: 'Close this window and open it again. What was saved before is still there.',
};

const WORDS = {
  'no-storage': {
    title: 'This browser keeps no records',
    what: 'The browser offers no storage of its own here, so no shot could be saved.',
    todo: 'Leave the private window, or open the app in an up-to-date browser from its proper address.',
  },
  'second-window': {
    title: 'Loud Gym is open in another window',
    what: 'Your records can be written by one window at a time, and another one has them.',
    todo: 'Go on in the other window, or take them over into this one. Nothing gets lost either way.',
  },
  'taken-over': {
    title: 'Another window has taken over',
    what: 'Your records now belong to the window that was opened last.',
    todo: 'You can close this one. Or take the records back.',
  },
  'newer-database': {
    title: 'Your records come from a newer Loud Gym',
    what: 'A later version of the app has written these records, and this version might spoil them.',
    todo: 'Update the app, or reload the page. Nothing has been changed.',
  },
  full: {
    title: 'This device is full',
    what: 'There is no room left to save on this device.',
    todo: 'Free some room: delete photos, films or other apps’ data, then try again. Everything saved before is safe.',
  },
  damaged: {
    title: 'The records cannot be read',
    what: 'The file with your records is damaged.',
    todo: 'Do not clear the browser’s data: the file may still be saved. Try again, and keep your last CSV copy at hand.',
  },
  broken: BROKEN,
} as const satisfies Record<string, Words>;

type Failure = keyof typeof WORDS;

export const FAILURE_WORDS: Readonly<Record<Failure, Words>> = WORDS;

/** Which of the failures an error is; a damaged event is a damaged log. */
export function failureOf(error: Error): Failure {
  if (error.name === 'DamagedEventError') return 'damaged';
  const named = 'failure' in error && typeof error.failure === 'string' ? error.failure : 'broken';
  return named in WORDS ? (named as Failure) : 'broken';
}
