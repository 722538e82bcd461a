// Words of signing in: the list of names, the locked desk, and the sections about it in Setup.
import type { AccessPart } from '../../app/domain/people/sign-in.ts';

const forms = { pin: 'PIN', 'pass-phrase': 'Pass phrase' } as const;

export const signInText = {
  title: 'Sign in',
  purpose: 'Choose your name and type your PIN or pass phrase; then the desk shows what is for you.',
  locked: 'This desk is locked',
  lockedHint:
    'What was being typed is kept, and there again when the same person signs in. It is dropped when somebody else does.',
  who: 'Who',
  name: 'Name',
  role: 'Role',
  signsInWith: 'Signs in with',
  forms: { pin: 'a PIN', 'pass-phrase': 'a pass phrase' } as const,
  nothingYet: 'nothing yet',
  field: (form: 'pin' | 'pass-phrase', name: string) => `${forms[form]} of ${name}`,
  fieldHint: '↑ and ↓ choose another name, Enter signs in.',
  noSecret: (name: string) =>
    `${name} has no PIN or pass phrase yet. A manager gives the first one in Setup, under Signing in.`,
  signIn: 'Sign in',
  signingIn: 'One moment …',
  waiting: 'There is a wait after wrong tries. It is over when the sentence above has gone.',
  mayTryAgain: 'Now it can be tried again.',
  typeIt: 'Type it first.',
  cancel: 'Cancel',
  bringBack: 'Bring back the newest copy from a backup',
  troubleWayOut:
    'A copy from a backup has the secrets as they were then. Without a copy, close the program and do as the README says under “Who sees what”; no record is lost by it.',
  otherFleet: 'Open another fleet folder',
  takeOver: 'Open for writing here',
  readOnly: (reason: string) => `Reading only: ${reason}`,

  switchTo: 'Switch',
  switchTip: 'Pick another name and sign in',
  lock: 'Lock',
  lockTip: 'Covers everything until somebody signs in',
  leave: 'Sign out',
  leaveTip: 'Closes again what signing in has opened',
  nothingToLock:
    'Nobody has signed in at this desk, so there is nothing to lock. Setup says how to begin, under Signing in.',
  adds: (parts: readonly AccessPart[]) =>
    parts.includes('money') ? 'Opens money and codes' : 'Needed before a code can be seen',
  moneyWaits: 'Money, and with it these settings, is shown here only after signing in.',

  rules: 'Signing in',
  rulesHint:
    'A PIN or pass phrase keeps colleagues apart at this desk. It does not encrypt the records: whoever can copy the fleet folder can read them. Codes alone are encrypted, in the vault.',
  wantsSignIn: 'Everybody signs in before anything is shown',
  wantsSignInHint:
    'Off: whoever sits down picks a name and works under it. Codes ask for a PIN or pass phrase all the same.',
  moneyNeedsSignIn: 'Money is shown only to a manager who has signed in',
  moneyNeedsSignInHint: 'Costs, margins and these settings stay closed until then. Everything else stays open.',
  idleMinutes: 'Lock after minutes without a key or the pointer',
  idleMinutesHint: 'Empty: never. Codes are locked after ten minutes at the latest, whatever stands here.',
  noManagerYet: 'No manager has a PIN or pass phrase yet. Give one below first, or nobody could get in.',

  secrets: 'PINs and pass phrases',
  secretsHint:
    'A manager gives each person the first one; they change it themselves. A PIN is digits only, at least four; a pass phrase has at least eight characters. It is kept in people-keys.json in the fleet folder, in a form from which it cannot be read. Being removed or made inactive takes it away.',
  give: 'Give one',
  giveTo: (name: string) => `Give ${name} a PIN or pass phrase`,
  giveOneTo: (name: string) => `Give one to ${name}: a PIN or pass phrase`,
  take: 'Take it away',
  takeFrom: (name: string) => `Take it away: the PIN or pass phrase of ${name}`,
  takeTitle: (name: string) => `Take it away from ${name}?`,
  takeSentence: (name: string) =>
    `${name} can no longer sign in until a manager gives a new one. Nothing of what ${name} entered changes.`,
  taken: (name: string) => `${name} has nothing to sign in with any more.`,
  given: (name: string) => `${name} can sign in now.`,
  newSecret: 'PIN or pass phrase',
  newSecretHint: 'Digits only: a PIN of at least four. Anything else: a pass phrase of at least eight characters.',
  again: 'The same once more',
  notTheSame: 'The two are not the same. Type both again.',
  keep: 'Keep it',
  signInFirst:
    'Sign in as a manager first: once a manager has a PIN or pass phrase, only who has signed in decides about them.',
  nobodyActive: 'Nobody is active.',

  own: 'Your own PIN or pass phrase',
  ownHint: (name: string) => `Of ${name}, who is at the desk.`,
  old: 'The present one',
  change: 'Change it',
  changed: 'Changed. From now on the new one counts.',
} as const;
