// What every change of one vehicle answers: the vehicle as it is now, for who asked, and the frame around it.
import { z } from 'zod';
import { deskSchema, vehicleViewSchema } from './views.ts';

export const changedVehicleSchema = z.strictObject({ view: vehicleViewSchema, desk: deskSchema });
