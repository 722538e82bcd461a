// Words for what a bar code scanner has read.

export const scanText = {
  unknown: (text: string) => `No vehicle here has “${text}” as its VIN or stock number.`,
  notHere: (vin: string) => `No vehicle here has the VIN ${vin}.`,
  takeIn: 'Take it in',
} as const;
