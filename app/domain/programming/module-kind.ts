// What a control module does, as far as the order of programming depends on it. Names are this project's own; no maker's names here.
import { z } from 'zod';

export const moduleKindSchema = z.enum([
  'body',
  'powertrain',
  'immobiliser-receiver',
  'keys',
  'instrument-cluster',
  'radio',
  'gateway',
  'transmission',
  'brakes',
  'airbag',
  'steering-lock',
  'battery-sensor',
  'camera-radar',
  'high-voltage',
  'other',
]);
export type ModuleKind = z.infer<typeof moduleKindSchema>;

export const moduleKindTitles: Readonly<Record<ModuleKind, string>> = {
  body: 'Body control module',
  powertrain: 'Engine or powertrain module',
  'immobiliser-receiver': 'Immobiliser receiver',
  keys: 'Keys',
  'instrument-cluster': 'Instrument cluster',
  radio: 'Radio or head unit',
  gateway: 'Gateway between the networks',
  transmission: 'Transmission module',
  brakes: 'Brake and stability module',
  airbag: 'Airbag module',
  'steering-lock': 'Steering lock',
  'battery-sensor': 'Battery sensor',
  'camera-radar': 'Camera or radar',
  'high-voltage': 'High-voltage system',
  other: 'Another module',
};

// First match wins: 'steering lock' before anything that merely mentions steering, 'high-voltage battery' before 'battery'.
const wordsOfKind: readonly (readonly [ModuleKind, RegExp])[] = [
  ['airbag', /air ?bag|\bsrs\b|restraint/],
  ['steering-lock', /steering (column )?lock/],
  ['high-voltage', /high.?voltage|traction (battery|motor)|inverter|battery management|\bhv\b/],
  ['battery-sensor', /battery sensor|battery monitor/],
  ['immobiliser-receiver', /immobili[sz]er|receiver|transponder ring/],
  ['keys', /\bkeys?\b|\bfobs?\b|remote/],
  ['gateway', /gateway/],
  ['camera-radar', /camera|radar|lidar|driver assist/],
  ['instrument-cluster', /cluster|instrument|\bdash\b/],
  ['radio', /radio|audio|head unit|navigation/],
  ['transmission', /transmission|gearbox|\btcm\b/],
  ['brakes', /brake|\babs\b|stability/],
  ['powertrain', /engine|powertrain|\b(ecm|pcm)\b/],
  ['body', /body|\bbcm\b/],
];

/** Guesses the kind from the name that a person gave the module; 'other' when nothing fits. Only a first choice for a person to correct. */
export function moduleKindFromName(name: string): ModuleKind {
  const lower = name.toLowerCase();
  return wordsOfKind.find(([, words]) => words.test(lower))?.[0] ?? 'other';
}
