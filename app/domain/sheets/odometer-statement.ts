// Whether a transfer in the United States asks for an odometer disclosure statement, as far as model year and year of transfer tell.

/**
 * The calendar year from which vehicles of this model year are exempt. 49 CFR 580.17(a)(3): model year 2010 and older, transferred at
 * least 10 years after 1 January of the model year; 2011 and newer, at least 20 years. Other exemptions of the section (gross weight
 * rating over 16,000 lb, not self-propelled, first sale before retail) are not judged here.
 */
export function odometerExemptFrom(modelYear: number): number {
  return modelYear + (modelYear <= 2010 ? 10 : 20);
}

export function isOdometerExempt(modelYear: number, transferYear: number): boolean {
  return transferYear >= odometerExemptFrom(modelYear);
}
