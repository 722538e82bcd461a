// The parts of a vehicle that work can touch, and which kind of sign-off such work puts in doubt.
import { z } from 'zod';

export const workAreaSchema = z.enum([
  'engine',
  'transmission',
  'brakes',
  'steering-suspension',
  'tyres-wheels',
  'electrical',
  'control-module',
  'immobiliser-keys',
  'airbag',
  'high-voltage',
  'climate',
  'body',
  'interior',
  'other',
]);
export type WorkArea = z.infer<typeof workAreaSchema>;

/** What later work disturbs. A check names the touches after which its sign-off no longer vouches for the vehicle. */
export const workTouchSchema = z.enum(['mechanical', 'electrical', 'safety', 'body', 'interior']);
export type WorkTouch = z.infer<typeof workTouchSchema>;

const touchesByArea: Readonly<Record<WorkArea, readonly WorkTouch[]>> = {
  engine: ['mechanical'],
  transmission: ['mechanical'],
  brakes: ['mechanical', 'safety'],
  'steering-suspension': ['mechanical', 'safety'],
  'tyres-wheels': ['mechanical', 'safety'],
  electrical: ['electrical'],
  'control-module': ['electrical'],
  'immobiliser-keys': ['electrical'],
  airbag: ['electrical', 'safety', 'interior'],
  'high-voltage': ['electrical', 'safety'],
  climate: ['mechanical'],
  body: ['body'],
  interior: ['interior'],
  other: ['mechanical', 'electrical', 'safety', 'body', 'interior'],
};

/** The kinds of sign-off that work in this area puts in doubt (common practice, no source). */
export function touchesOf(area: WorkArea): readonly WorkTouch[] {
  return touchesByArea[area];
}
