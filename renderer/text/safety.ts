// Words of the screen Safety copies: damaged files, backups, putting back, the second folder.
import type { BackupPreview, PutBackPreview, SafetyView } from '../../app/contract/safety-view.ts';
import { showMoment } from './instant.ts';
import type { Purpose } from './purpose.ts';
import { sayWholeDaysIn } from './say-day.ts';

export const safetyPurpose: Purpose = {
  manager:
    'The way back when a file is damaged or something was changed by mistake. Begin with the files that could not be used, if there are any; look into a copy before you put it back.',
  technician: null,
  sales: null,
};

type Backup = SafetyView['backups'][number];

const vehicles = (count: number) => (count === 1 ? '1 vehicle' : `${count} vehicles`);
const reasons: Readonly<Record<Backup['reason'], string>> = {
  daily: 'the day’s own',
  'before-migration': 'before a change of format',
  'before-restore': 'before something was put back',
  'by-hand': 'asked for by a person',
};

function stayed(left: number): string {
  if (left === 0) return '';
  return left === 1
    ? ' What is damaged in the backup stayed as it is now.'
    : ` ${left} files that are damaged in the backup stayed as they are now.`;
}

function count(view: BackupPreview, effect: BackupPreview['vehicles'][number]['effect']): number {
  return view.vehicles.filter((vehicle) => vehicle.effect === effect).length;
}

export const safetyText = {
  title: 'Safety copies',
  onlyManagers: 'Safety copies are for the manager.',
  reading: 'Looking through the backups …',
  tryAgain: 'Look again',
  troubles: 'Files that could not be used',
  noTroubles: 'Every file of the fleet reads as it was written.',
  troublesHint:
    'A damaged file is moved aside unchanged and never deleted; the rest of the fleet is open. Where a backup holds a good copy, look at what it would change, then put it back.',
  file: 'File',
  wrong: 'What is wrong, and where it is now',
  lastGood: 'Last good copy',
  none: 'none known',
  movedTo: (path: string) => `Moved to ${path}.`,
  look: 'Look at the copy',
  lookAt: (what: string) => `Look at the copy of ${what}`,
  settle: 'Say no more of it',
  settleTip: 'The file stays where it was moved to; only this message goes.',
  settled: (fileName: string) => `Nothing more is said of ${fileName}. The file itself was kept.`,
  backups: 'Backups',
  noBackups: 'There is no backup yet. One is made each day the program is open, or now.',
  backUpNow: 'Make a backup now',
  backedUp: 'A backup was made and read back.',
  notInSecond: 'It is in the fleet folder only: the second folder cannot be reached.',
  made: 'Made',
  why: 'Why',
  holds: 'Holds',
  where: 'Where',
  state: 'State',
  act: 'Act',
  reasons,
  vehicles,
  places: { fleet: 'fleet folder', second: 'second folder' },
  notHeld: (files: number) =>
    `without ${files === 1 ? '1 file' : `${files} files`} of photographs and documents, which could not be kept`,
  good: 'good: read back when made',
  bad: 'cannot be used',
  open: 'Look into',
  lookOne: 'Look',
  openThis: (backup: Backup) => `Look into the backup of ${showMoment(backup.madeAt)}, ${reasons[backup.reason]}`,
  second: 'Second folder',
  secondHint:
    'Each backup is also written to a second folder, if there is one: on another drive or a share, so that one broken disk does not take both.',
  secondNone: 'No second folder is chosen. If this disk breaks, the backups break with it.',
  secondIs: (folder: string) => `Backups go to ${folder} too.`,
  secondGone: (folder: string) =>
    `The second folder ${folder} cannot be reached. Backups are made in the fleet folder alone until it is back. Connect its drive or share, then look again.`,
  choose: 'Choose a second folder',
  chooseOther: 'Choose another',
  leave: 'No second folder',
  chosen: 'A backup was written to the second folder and read back.',
  left: 'No more backups go to a second folder. Those that are there stay.',
  of: (backup: Backup) => `Backup of ${showMoment(backup.madeAt)}`,
  checking: 'Every file of the backup is being read and checked …',
  checked: 'Every file in it was read just now and is as it was written.',
  checkedSome: (damaged: number) =>
    `${damaged === 1 ? 'One file of this backup is' : `${damaged} files of this backup are`} not as written and cannot be put back. All others were read just now and are whole: they can be put back one by one, or all of them together.`,
  damaged: 'Damaged in this backup',
  damagedWhy: 'What is wrong with it',
  damagedThen: 'What becomes of it',
  damagedStays: (isThereNow: boolean) =>
    isThereNow ? 'what is there now stays as it is' : 'does not come back from here; look for it in another backup',
  putBackWhole: (damaged: number) =>
    `Put back all that is whole, leave ${damaged} as ${damaged === 1 ? 'it is' : 'they are'}`,
  counts: (view: BackupPreview) =>
    `Putting all of it back changes ${vehicles(count(view, 'changes'))}, brings back ${count(view, 'comes')}, takes ${count(view, 'goes')} out of the lot, and leaves ${count(view, 'same')} as they are.`,
  settings: (names: readonly string[]) =>
    names.length === 0 ? 'The settings stay as they are.' : `Settings that become as they were: ${names.join(', ')}.`,
  nothingOfAll: 'It holds just what is there now: there is nothing to put back.',
  vehicle: 'Vehicle',
  effect: 'What putting it back does',
  effects: {
    comes: 'comes back into the lot',
    changes: 'changes',
    same: 'stays as it is',
    goes: 'goes out of the lot: it was not there then',
  } satisfies Record<BackupPreview['vehicles'][number]['effect'], string>,
  lookAtOne: (name: string) => `Look at what changes for ${name}`,
  what: 'What',
  now: 'Now',
  inCopy: 'In the copy',
  /** A value as it was written down, its days as they are read here. */
  value: sayWholeDaysIn,
  shortened: 'More than this changes; only the first lines are shown.',
  keys: 'Keys and histories come back only where nothing is now; what is there stays.',
  one: {
    comes: 'There is nothing of it now. It comes back as the copy has it.',
    changes: 'These facts become again what they are in the copy:',
    same: 'The copy holds just what is there now.',
    goes: 'It was not in the fleet then. It leaves the lot; its file is kept among the withdrawn ones.',
    mends: 'What has gone or is damaged comes back as it was written. Nothing else changes.',
  } satisfies Record<PutBackPreview['effect'], string>,
  before: 'A backup of what is there now is made first, so that this can be taken back.',
  putBackOne: 'Put this vehicle back',
  putBackCopy: 'Put this copy back',
  putBackAll: 'Put all of it back',
  doneAll: (restored: number, withdrawn: number, left: number) =>
    `Put back: ${restored} records are as they were then, ${vehicles(withdrawn)} left the lot.${stayed(left)}`,
  doneOne: (name: string) => `Put back: ${name}.`,
  takeBack: 'Take it back again',
  takenBack: 'Taken back: it is as it was before.',
  canTakeBack: (what: string) => `Put back last: ${what}.`,
  wholeFleet: (day: string) => `the whole fleet as of ${day}`,
} as const;
