// Words of the About box and of the report of a fault.

export const aboutText = {
  title: 'About Lotwright',
  what: 'Follows each used vehicle from purchase to ready for sale. Works without a network; nothing leaves this computer unless somebody prints or exports it.',
  caution:
    'The vehicle maker’s service information and local law come before this program. Work that needs a licence is for those who hold it.',
  version: 'Version',
  runtime: 'Runtime',
  system: 'System',
  inside: 'What is inside, and under which licence',
  runtimeLicences:
    'Electron and Chromium have theirs in the program’s folder: LICENSE.electron.txt and LICENSES.chromium.html.',
  report: 'Report of a fault',
  reportSentence:
    'For whoever looks into a fault: versions, counts and the last lines of the log. No codes, prices, names, VINs or folders. Read it, then copy it; it goes nowhere by itself.',
  reportField: 'The report',
  showReport: 'Write a report of a fault',
  copy: 'Copy the report',
  copied: 'The report is on the clipboard.',
  notCopied: 'The clipboard could not be reached. Select the text and copy it with Ctrl+C.',
  reading: 'Reading …',
} as const;
