// Keeping, seeing, copying and destroying the code of a request. A look is in the vehicle's history before the value is handed out.
// Values are handed to the vault, to the page that asked, or to the clipboard; they are put into no sentence, no history, no record.
import type { AppError } from '../contract/app-error.ts';
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import { codeWarnings, compactCode } from '../domain/codes/code-form.ts';
import { codeKindOf, codeName } from '../domain/codes/code-name.ts';
import type { CodeRequest } from '../domain/codes/code-request.ts';
import { stepsNeedingCode, whyNoHandOver, whyNoKeeping, whyNoLook } from '../domain/codes/who-may-look.ts';
import type { HistoryKind } from '../domain/people/history-entry.ts';
import { ok, type Result } from '../domain/shared/result.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import type { CodeRef } from '../storage/vault/vault-data.ts';
import { type Answer, type DeskContext, refuse, refuseStorage } from './desk-context.ts';
import { keptCodes } from './kept-codes.ts';
import { refuseVaultProblem } from './vault-answers.ts';
import { shownSeconds } from './vault-owner.ts';

type Asked = { readonly vehicle: Vehicle; readonly request: CodeRequest; readonly ref: CodeRef };
type Place = { readonly vehicleId: string; readonly requestId: string };

function askedFor(context: DeskContext, { vehicleId, requestId }: Place): Asked | null {
  const vehicle = context.visible(vehicleId)?.data;
  const request = vehicle?.codeRequests.find(({ id }) => id === requestId);
  return vehicle && request ? { vehicle, request, ref: { vehicleId, requestId, kind: request.kind } } : null;
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

async function tell(
  context: DeskContext,
  { vehicle, request }: Asked,
  what: { readonly kind: HistoryKind; readonly happened: string; readonly reason: string },
) {
  const name = capital(codeName(request, context.shop().codeKinds));
  return context.store.noteHistory(vehicle.id, {
    by: context.person().id,
    kind: what.kind,
    label: `${name}: ${what.happened}`,
    reason: what.reason,
    about: `codeRequests/${request.id}`,
  });
}

export async function readKeptCodes(
  context: DeskContext,
  { vehicleId }: ChannelInput<'vault:codes'>,
): Answer<ChannelOutput<'vault:codes'>> {
  const kept = context.visible(vehicleId);
  return kept ? keptCodes(context, kept.data) : refuse('not-found');
}

function atField(field: string, sentence: string) {
  return refuse('refused', '', [{ field, sentence }]);
}

/** What stands against the value as it is; null when nothing does. */
function whyNotAsItIs(
  context: DeskContext,
  { request }: Asked,
  value: string,
  keptBecause: string,
): ReturnType<typeof atField> | null {
  const { codeKinds } = context.shop();
  const kind = codeKindOf(codeKinds, request.kind);
  const warnings = kind === null ? [] : codeWarnings(kind, value, codeKinds);
  if (warnings.length > 0 && keptBecause.trim() === '')
    return refuse('refused', '', [
      ...warnings.map(({ sentence }) => ({ field: 'value', sentence })),
      { field: 'keptBecause', sentence: 'Say why it is kept as it is.' },
    ]);
  const compact = compactCode(value);
  if (compact.length >= 3 && compactCode(keptBecause).includes(compact))
    return atField('keptBecause', 'The reason is written into the history, so it must not hold the code itself.');
  return null;
}

export async function putCode(
  context: DeskContext,
  input: ChannelInput<'vault:put-code'>,
): Answer<ChannelOutput<'vault:put-code'>> {
  const asked = askedFor(context, input);
  if (!asked) return refuse('not-found');
  const refusal = whyNoKeeping(context.person().role, asked.vehicle);
  if (refusal !== null) return refuse('not-allowed', refusal);
  const { value, keptBecause, replaces } = input;
  const unusual = whyNotAsItIs(context, asked, value, keptBecause);
  if (unusual !== null) return unusual;
  const vault = await context.vault.openVault();
  if (!vault.ok) return refuseVaultProblem(vault.error);
  const put = await vault.value.putCode(asked.ref, value, { replaces });
  if (!put.ok) return refuseVaultProblem(put.error, 'value');
  const happened = replaces ? 'another code is kept instead' : 'kept in the vault';
  const told = await tell(context, asked, { kind: 'put-code', happened, reason: keptBecause.trim() });
  context.vault.noteUse();
  return told.ok ? keptCodes(context, asked.vehicle) : refuseStorage(told.error);
}

/** The step in words, from the record itself; null when that step does not need this code. */
function stepWords({ vehicle, request }: Asked, step: ChannelInput<'vault:look'>['step']): string | null {
  if (step === null) return '';
  const found = stepsNeedingCode(vehicle, request.id).find(
    ({ jobId, stepId }) => jobId === step.jobId && stepId === step.stepId,
  );
  return found ? `Step ${found.number}, ${found.title}` : null;
}

export async function lookAtCode(
  context: DeskContext,
  input: ChannelInput<'vault:look'>,
): Answer<ChannelOutput<'vault:look'>> {
  const asked = askedFor(context, input);
  if (!asked) return refuse('not-found');
  const { role } = context.person();
  const { ref, request, vehicle } = asked;
  const refusal = input.isHandOver ? whyNoHandOver(role, vehicle) : whyNoLook(role, vehicle, request.id);
  if (refusal !== null) return refuse('not-allowed', refusal);
  if (role === 'technician' && input.step === null) return atField('step', 'Choose the step that needs the code.');
  const step = stepWords(asked, input.step);
  if (step === null) return atField('step', 'This step does not need the code any more. Choose another one.');
  const shown = context.vault.shown();
  if (shown !== null && (shown.ref.vehicleId !== ref.vehicleId || shown.ref.requestId !== ref.requestId))
    return refuse('refused', 'Another code is being shown. Hide it first: codes are seen one at a time.');
  const vault = await context.vault.openVault();
  if (!vault.ok) return refuseVaultProblem(vault.error);
  // Opened first, so that the history tells of no look that showed nothing; handed out only once the history has it.
  const seen = await vault.value.lookAt(ref);
  if (!seen.ok) return refuseVaultProblem(seen.error);
  const why = [step, input.why.trim()].filter((part) => part !== '').join('. ');
  const happened = input.isHandOver ? 'looked at, to hand it to the buyer' : 'looked at';
  const told = await tell(context, asked, { kind: 'look-at-code', happened, reason: why });
  if (!told.ok) return refuseStorage(told.error);
  context.vault.noteShown(ref, why);
  context.vault.noteUse();
  return ok({ value: seen.value, hiddenAfterSeconds: shownSeconds });
}

export async function hideCode(context: DeskContext): Answer<ChannelOutput<'vault:hide'>> {
  context.vault.hide();
  return ok({});
}

export async function copyCode(
  context: DeskContext,
  input: ChannelInput<'vault:copy'>,
): Answer<ChannelOutput<'vault:copy'>> {
  const asked = askedFor(context, input);
  if (!asked) return refuse('not-found');
  const shown = context.vault.shown();
  if (shown === null || shown.ref.vehicleId !== input.vehicleId || shown.ref.requestId !== input.requestId)
    return refuse('refused', 'Only a code that is being shown can be copied. Look at it first.');
  const vault = await context.vault.openVault();
  if (!vault.ok) return refuseVaultProblem(vault.error);
  const seen = await vault.value.lookAt(asked.ref);
  if (!seen.ok) return refuseVaultProblem(seen.error);
  const told = await tell(context, asked, {
    kind: 'look-at-code',
    happened: 'copied to the clipboard',
    reason: shown.why,
  });
  if (!told.ok) return refuseStorage(told.error);
  await context.deps.outside.copyPassing(seen.value, shownSeconds);
  return ok({});
}

export async function destroyCode(
  context: DeskContext,
  input: ChannelInput<'vault:destroy'>,
): Answer<ChannelOutput<'vault:destroy'>> {
  const asked = askedFor(context, input);
  if (!asked) return refuse('not-found');
  const done = await destroyAndTell(context, asked, input.why.trim());
  return done.ok ? keptCodes(context, asked.vehicle) : done;
}

/** The history has it first: a code that is gone without a word cannot be told from one that never was. */
async function destroyAndTell(context: DeskContext, asked: Asked, why: string): Promise<Result<null, AppError>> {
  const vault = await context.vault.vault();
  if (!vault.ok) return refuseVaultProblem(vault.error);
  const marks = await vault.value.marks();
  if (!marks.ok) return refuseVaultProblem(marks.error);
  const { ref } = asked;
  const isHeld = marks.value.some(
    (mark) => mark.state === 'held' && mark.ref.vehicleId === ref.vehicleId && mark.ref.requestId === ref.requestId,
  );
  if (!isHeld) return refuse('refused', 'No code is kept for this request.');
  const told = await tell(context, asked, { kind: 'destroy-code', happened: 'destroyed', reason: why });
  if (!told.ok) return refuseStorage(told.error);
  const shown = context.vault.shown();
  if (shown?.ref.requestId === ref.requestId && shown.ref.vehicleId === ref.vehicleId) context.vault.hide();
  const gone = await vault.value.destroy(ref, context.person().id, why);
  if (!gone.ok) return refuseVaultProblem(gone.error);
  context.vault.noteUse();
  return ok(null);
}
