// Words about the invented sample: what it is, the ways out of it, and beginning it again.

export const sampleText = {
  line: 'This fleet is invented. Try anything on it: nobody’s work is at stake.',
  lineLabel: 'About the invented sample',
  begin: 'Begin your own fleet…',
  beginTip: 'You choose an empty folder for it. The sample stays where it is.',
  wayBack: (folder: string) => `Back to the fleet “${folder}”`,
  throwAway: 'Throw away what was changed here…',
  hide: 'Hide this line',
  opened: 'This is the invented sample. Your own fleet is closed and as you left it.',

  title: 'Throw away what was changed here?',
  goes: 'A new copy of the sample, as it came with the program, is opened in place of this one. Everything that was done in this one goes from view: vehicles and entries, settings, people and their PINs, the vault, printed sheets and backups. Undo does not bring it back.',
  kept: 'Nothing is deleted. This copy is put aside whole, in a folder that has the day and time in its name, and opens again from there like any fleet.',
  doIt: 'Throw it away',
  working: 'A new copy is being made …',
  doneTitle: 'A new copy of the sample is open',
  doneSentence: 'The one that was worked in lies here until somebody deletes it; the program never does:',
  show: 'Show the folder',

  section: 'Other fleets, and the sample',
  hintOwn: 'Each fleet is a folder of its own. The program opens at the next start the one that was opened last here.',
  hintSample:
    'The invented sample is open, to try things in. Your own fleet lies in a folder of its own; none of the sample gets into it.',
  otherFleet: 'Open another fleet folder…',
  otherFleetTip: 'The folder of a fleet, or an empty one for a new fleet',
  openSample: 'Look at the invented sample',
  openSampleTip:
    'Your own fleet is closed for as long, and opened again at the next start. From the sample a button leads back.',
} as const;
