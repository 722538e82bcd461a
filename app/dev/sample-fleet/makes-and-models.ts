// The invented makes and models of the sample fleet. All but Merrowick, which came later, were compared with NHTSA's public vPIC lists
// (12,119 makes, 25,836 models) and are in neither.
import type { DriveKind } from '../../domain/vehicle/identity.ts';

/**
 * First three characters of the VINs. None is assigned to a maker: no code that begins with G stands in NHTSA's public vPIC table
 * (12,767 codes), and the public lists of ISO 3780 give G to no country.
 */
export const makes = {
  Tarnholm: 'GT1',
  Velquist: 'GV2',
  Orvane: 'GR3',
  Sandrell: 'GS4',
  Merrowick: 'GM5',
} as const;
export type Make = keyof typeof makes;

export type Model = {
  readonly make: Make;
  readonly model: string;
  readonly body: string;
  readonly drive: DriveKind;
  /** Characters 4, 5, 6 and 8 of the VIN; 7 follows from the model year. */
  readonly vinLine: readonly [string, string];
  /** What one year old and cared for would fetch, in whole dollars; only used to invent prices that hang together. */
  readonly freshPrice: number;
};

function model(
  make: Make,
  name: string,
  body: string,
  freshPrice: number,
  vinLine: Model['vinLine'],
  drive: DriveKind = 'combustion',
): Model {
  return { make, model: name, body, freshPrice, vinLine, drive };
}

export const models = {
  skerry: model('Tarnholm', 'Skerry', 'SUV', 30_500, ['SK2', '4']),
  fjell: model('Tarnholm', 'Fjell', 'pickup', 36_000, ['FJ7', '2']),
  madrigal: model('Velquist', 'Madrigal', 'saloon', 27_500, ['MD1', '6']),
  quaver: model('Velquist', 'Quaver', 'hatchback', 26_000, ['KV9', '1'], 'electric'),
  pell: model('Orvane', 'Pell', 'hatchback', 19_500, ['PL3', '8']),
  cantle: model('Orvane', 'Cantle', 'crossover', 25_500, ['CT5', '3']),
  bight: model('Sandrell', 'Bight', 'coupe', 31_000, ['BT4', '9']),
  marram: model('Sandrell', 'Marram', 'SUV', 34_000, ['MR8', '5']),
  teasel: model('Merrowick', 'Teasel', 'minivan', 28_000, ['TS6', '7']),
  haywain: model('Merrowick', 'Haywain', 'van', 32_000, ['HW2', '0']),
  mallow: model('Merrowick', 'Mallow', 'saloon', 28_500, ['ML4', '2'], 'hybrid'),
} as const satisfies Record<string, Model>;
export type ModelKey = keyof typeof models;
