// Words around a VIN while it is typed.

export const vinText = {
  label: 'VIN',
  count: (count: number) => `${count} of 17`,
  holds: 'check digit holds',
  assignedIn: (country: string) => `maker’s code assigned in ${country}`,
  years: (years: readonly number[]) => `model year ${years.join(' or ')}`,
  takeYear: (year: number) => `Use ${year}`,
  use: (vin: string) => `Use ${vin}`,
  reason: 'Why this VIN is kept, or why there is none',
  reasonHint: 'For example: plate checked twice, grey import; plate not readable yet',
} as const;
