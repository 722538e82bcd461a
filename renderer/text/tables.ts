// Words of saving a table as a CSV file.

export const tableText = {
  save: 'CSV',
  saveWhat: (what: string) => `Save ${what} as CSV`,
  saved: (fileName: string) => `${fileName} is in the folder “exports” of the fleet.`,
  showFolder: 'Show the folder',
  lot: 'the vehicles in view',
  nextJobs: 'the list of next jobs',
  ledger: 'all entries of this vehicle',
  parts: 'the parts of this vehicle',
} as const;
