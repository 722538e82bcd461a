// The list of keys, as shown by `?`. What they do is in frame/use-commands.ts and in the screens.

export const keyGroups: readonly {
  readonly where: string;
  readonly keys: readonly { readonly key: string; readonly does: string }[];
}[] = [
  {
    where: 'Everywhere',
    keys: [
      { key: 'Alt+1  to  Alt+6', does: 'Lot, Next jobs, Waiting, Money, Sheets, Setup' },
      { key: '/  or  Ctrl+F', does: 'Search in the Lot' },
      { key: 'N  or  Ctrl+N', does: 'Take a vehicle in' },
      { key: 'Ctrl+Z', does: 'Undo the last saved change; inside a text field, the typing' },
      { key: 'Ctrl+Shift+Z  or  Ctrl+Y', does: 'Do it again' },
      { key: 'F9  Shift+F9', does: 'Undo and redo a saved change, also inside a text field' },
      { key: 'Ctrl+L', does: 'Lock the desk; where nobody has to sign in, sign out' },
      { key: 'Esc', does: 'Leave the field or the dialog; then back to the Lot' },
      {
        key: 'A bar code scanner',
        does: 'Opens the vehicle of the scanned VIN, stock number or mark of a sheet; in a field, fills it in',
      },
      { key: '?', does: 'This list' },
      { key: 'F1  Shift+F1', does: 'About the program; a report of a fault' },
    ],
  },
  {
    where: 'In the Lot',
    keys: [
      { key: '↑  ↓', does: 'One vehicle up or down' },
      { key: 'Page up  Page down', does: 'Ten vehicles up or down' },
      { key: 'Home  End', does: 'First or last vehicle' },
      { key: 'Enter', does: 'Open the vehicle; in the search, go to the first found' },
    ],
  },
  {
    where: 'On a vehicle',
    keys: [
      { key: 'Ctrl+V', does: 'Add the picture or the files on the clipboard; inside a text field, the text' },
      { key: '←  →', does: 'Day by day on the hold strip; from one photograph shown large to the next' },
    ],
  },
  {
    where: 'In Waiting',
    keys: [
      { key: '↑  ↓  Home  End', does: 'One line up or down; first or last' },
      { key: 'Enter', does: 'Open the vehicle where the part, code or work is entered' },
      { key: 'C', does: 'Write down that it was chased' },
    ],
  },
  {
    where: 'In the rows of a purchase list',
    keys: [
      { key: '↑  ↓  Page up  Page down  Home  End', does: 'From row to row' },
      { key: 'Space', does: 'Take the row in or leave it out' },
      { key: 'Ctrl+↓  Ctrl+↑', does: 'Next or previous row with something against it' },
    ],
  },
  {
    where: 'In a day field',
    keys: [
      { key: 'T', does: 'Today' },
      { key: '-3', does: 'Three days ago; any number will do' },
      { key: '+5', does: 'In five days' },
      { key: '↑  ↓', does: 'A day later or earlier' },
      { key: 'Alt+↓', does: 'Open a calendar' },
    ],
  },
];
