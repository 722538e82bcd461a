// Everything the page may ask of the main process, once: name, what goes in, what comes out, who may, whether it changes anything.
// No channel takes a path or a URL.
import { z } from 'zod';
import { codeKindsSchema } from '../domain/codes/code-kinds.ts';
import { filingRulesSchema } from '../domain/codes/filing-limit.ts';
import { inspectionSettingsSchema } from '../domain/diagnosis/inspection-schemes.ts';
import { supportRangesSchema } from '../domain/diagnosis/support-voltage.ts';
import { ageingBandsSchema } from '../domain/fleet/ageing.ts';
import {
  checkSchema,
  daysUntilCodesAreDestroyedSchema,
  dealerSchema,
  fundingPlansSchema,
  personSchema,
  ratesSchema,
  roleSchema,
  rulePacksSchema,
  sellingTermsSchema,
} from '../domain/fleet/shop.ts';
import { saleTaxSchema } from '../domain/money/margin-tax.ts';
import { valueLossCurveSchema } from '../domain/money/value-loss.ts';
import { signInRulesSchema } from '../domain/people/sign-in.ts';
import { moduleKindSchema } from '../domain/programming/module-kind.ts';
import { routeTallySchema } from '../domain/programming/route-history.ts';
import { rulePackSchema } from '../domain/programming/rule-pack.ts';
import { identifierSchema } from '../domain/shared/identifier.ts';
import { sheetKindSchema, sheetSchema } from '../domain/sheets/sheet.ts';
import { turnaroundSettingsSchema } from '../domain/time/turnaround-settings.ts';
import { workingCalendarSchema } from '../domain/time/working-calendar.ts';
import { vehicleChangeSchema } from '../domain/vehicle/change.ts';
import { takeInSchema } from '../domain/vehicle/take-in.ts';
import { archiveChannels } from './archive-channels.ts';
import { attachmentChannels } from './attachment-channels.ts';
import { caseQuerySchema, caseSummarySchema } from './case-summary.ts';
import { changedVehicleSchema } from './changed-vehicle.ts';
import { codesUsualSchema } from './codes-usual-view.ts';
import { historyPlaceSchema, historyViewSchema } from './history-view.ts';
import { holidayChannels } from './holiday-channels.ts';
import { listImportChannels } from './list-import-channels.ts';
import { logoChannels } from './logo-channels.ts';
import { moneyTableSchema, moneyViewSchema } from './money-view.ts';
import { nextJobsSchema } from './next-jobs-view.ts';
import { peopleChannels } from './people-channels.ts';
import { programChannels } from './program-channels.ts';
import { safetyChannels } from './safety-channels.ts';
import { sampleChannels } from './sample-channels.ts';
import { sheetChannels } from './sheet-channels.ts';
import { tableChannels } from './table-channels.ts';
import { vaultChannels } from './vault-channels.ts';
import { deskSchema, lotRowSchema, shopViewSchema, themeSchema, vehicleViewSchema } from './views.ts';
import { waitingViewSchema } from './waiting-view.ts';
import { whatIfSchema } from './what-if-view.ts';

const everybody = roleSchema.options;
const manager = ['manager'] as const;
const workshop = ['manager', 'technician'] as const;
const nothing = z.strictObject({});
const oneVehicle = z.strictObject({ id: identifierSchema });

const shopPartSchema = z.discriminatedUnion('part', [
  z.strictObject({ part: z.literal('dealer'), value: dealerSchema }),
  z.strictObject({ part: z.literal('rates'), value: ratesSchema }),
  z.strictObject({ part: z.literal('people'), value: z.array(personSchema).min(1).max(60) }),
  z.strictObject({ part: z.literal('checklist'), value: z.array(checkSchema).max(60) }),
  z.strictObject({ part: z.literal('rulePacks'), value: rulePacksSchema }),
  z.strictObject({ part: z.literal('fundingPlans'), value: fundingPlansSchema }),
  z.strictObject({ part: z.literal('saleTax'), value: saleTaxSchema }),
  z.strictObject({ part: z.literal('selling'), value: sellingTermsSchema }),
  z.strictObject({ part: z.literal('calendar'), value: workingCalendarSchema }),
  z.strictObject({ part: z.literal('turnaround'), value: turnaroundSettingsSchema }),
  z.strictObject({ part: z.literal('ageingBands'), value: ageingBandsSchema }),
  z.strictObject({ part: z.literal('valueLoss'), value: valueLossCurveSchema }),
  z.strictObject({ part: z.literal('inspection'), value: inspectionSettingsSchema }),
  z.strictObject({ part: z.literal('supportRanges'), value: supportRangesSchema }),
  z.strictObject({ part: z.literal('codeKinds'), value: codeKindsSchema }),
  z.strictObject({ part: z.literal('filingRules'), value: filingRulesSchema }),
  z.strictObject({ part: z.literal('daysUntilCodesAreDestroyed'), value: daysUntilCodesAreDestroyedSchema }),
  z.strictObject({ part: z.literal('signIn'), value: signInRulesSchema }),
]);
export type ShopPart = z.infer<typeof shopPartSchema>;

const printRequest = z.strictObject({
  kind: sheetKindSchema,
  vehicleIds: z.array(identifierSchema).min(1).max(500),
  /** The one code request or programming job of one vehicle that it is about. */
  factId: identifierSchema.optional(),
});
/** A printed file, named so that it can be opened again by this name; never a path. */
const printedSchema = z.strictObject({ fileName: z.string(), pages: z.int().min(1) });

export const channels = {
  'desk:read': { input: nothing, output: deskSchema, roles: everybody, mutates: false },
  'desk:set-person': {
    input: z.strictObject({ personId: identifierSchema }),
    output: deskSchema,
    roles: everybody,
    mutates: true,
  },
  ...peopleChannels,
  'desk:set-theme': {
    input: z.strictObject({ theme: themeSchema }),
    output: deskSchema,
    roles: everybody,
    mutates: true,
  },
  'lot:read': { input: nothing, output: z.array(lotRowSchema).readonly(), roles: everybody, mutates: false },
  'vehicle:open': { input: oneVehicle, output: vehicleViewSchema, roles: everybody, mutates: false },
  'vehicle:take-in': { input: takeInSchema, output: changedVehicleSchema, roles: manager, mutates: true },
  'vehicle:change': {
    input: z.strictObject({ id: identifierSchema, baseRevision: z.int().min(1), change: vehicleChangeSchema }),
    output: changedVehicleSchema,
    roles: everybody,
    mutates: true,
  },
  'vehicle:what-if': {
    input: z.strictObject({ id: identifierSchema, changes: z.array(vehicleChangeSchema).min(1).max(40) }),
    output: whatIfSchema,
    roles: manager,
    mutates: false,
  },
  'vehicle:withdraw': {
    input: z.strictObject({ id: identifierSchema, baseRevision: z.int().min(1) }),
    output: deskSchema,
    roles: manager,
    mutates: true,
  },
  'vehicle:history': {
    input: z.strictObject({ id: identifierSchema, place: historyPlaceSchema.nullable() }),
    output: historyViewSchema,
    roles: workshop,
    mutates: false,
  },
  'cases:find': { input: caseQuerySchema, output: caseSummarySchema, roles: workshop, mutates: false },
  'edit:undo': {
    input: nothing,
    output: z.strictObject({ vehicleId: identifierSchema, desk: deskSchema }),
    roles: workshop,
    mutates: true,
  },
  'edit:redo': {
    input: nothing,
    output: z.strictObject({ vehicleId: identifierSchema, desk: deskSchema }),
    roles: workshop,
    mutates: true,
  },
  'money:read': { input: nothing, output: moneyViewSchema, roles: manager, mutates: false },
  'money:export': {
    input: z.strictObject({ table: moneyTableSchema }),
    output: z.strictObject({ fileName: z.string() }),
    roles: manager,
    mutates: true,
  },
  'money:show-folder': { input: nothing, output: nothing, roles: manager, mutates: false },
  'shop:read': { input: nothing, output: shopViewSchema, roles: manager, mutates: false },
  'shop:change': {
    input: z.strictObject({ baseRevision: z.int().min(0), change: shopPartSchema }),
    output: z.strictObject({ view: shopViewSchema, desk: deskSchema }),
    roles: manager,
    mutates: true,
  },
  /** The rules by which jobs are planned now: for everybody who plans jobs, not only for whoever may change them. */
  'programming:pack': { input: nothing, output: rulePackSchema, roles: workshop, mutates: false },
  'programming:routes': {
    input: z.strictObject({ moduleKind: moduleKindSchema }),
    output: z.array(routeTallySchema).readonly(),
    roles: workshop,
    mutates: false,
  },
  'next-jobs:read': { input: nothing, output: nextJobsSchema, roles: workshop, mutates: false },
  'codes:usual': { input: oneVehicle, output: codesUsualSchema, roles: workshop, mutates: false },
  'waiting:read': { input: nothing, output: waitingViewSchema, roles: workshop, mutates: false },
  'waiting:export': {
    input: nothing,
    output: z.strictObject({ fileName: z.string() }),
    roles: workshop,
    mutates: true,
  },
  'sheet:preview': {
    input: z.strictObject({ kind: sheetKindSchema, id: identifierSchema, factId: identifierSchema.optional() }),
    output: sheetSchema,
    roles: everybody,
    mutates: false,
  },
  'sheet:print': { input: printRequest, output: z.array(printedSchema).readonly(), roles: everybody, mutates: true },
  'sheet:open': {
    input: z.strictObject({ fileName: z.string().max(160) }),
    output: nothing,
    roles: everybody,
    mutates: false,
  },
  'sheet:show-folder': { input: nothing, output: nothing, roles: everybody, mutates: false },
  ...attachmentChannels,
  ...logoChannels,
  ...sheetChannels,
  ...holidayChannels,
  ...listImportChannels,
  ...archiveChannels,
  ...tableChannels,
  ...vaultChannels,
  ...safetyChannels,
  ...sampleChannels,
  ...programChannels,
  'fleet:choose': { input: nothing, output: deskSchema, roles: manager, mutates: true },
  'fleet:restore-trouble': {
    input: z.strictObject({ id: z.string().max(200) }),
    output: deskSchema,
    roles: manager,
    mutates: true,
  },
  'fleet:settle-trouble': {
    input: z.strictObject({ id: z.string().max(200) }),
    output: deskSchema,
    roles: manager,
    mutates: true,
  },
  'fleet:take-over': { input: nothing, output: deskSchema, roles: manager, mutates: true },
  'fleet:back-up': { input: nothing, output: deskSchema, roles: manager, mutates: true },
} as const satisfies Record<string, ChannelSpec>;

export type ChannelSpec = {
  readonly input: z.ZodType;
  readonly output: z.ZodType;
  readonly roles: readonly z.infer<typeof roleSchema>[];
  readonly mutates: boolean;
};
export type ChannelName = keyof typeof channels;
export type ChannelInput<Name extends ChannelName> = z.infer<(typeof channels)[Name]['input']>;
export type ChannelOutput<Name extends ChannelName> = z.infer<(typeof channels)[Name]['output']>;
