// Reading and changing the shop's settings, and what this desk itself remembers: who is at it, which theme.
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import type { Shop } from '../domain/fleet/shop.ts';
import { currentPack } from '../domain/programming/current-pack.ts';
import { generalPack } from '../domain/programming/general-pack.ts';
import type { RulePack } from '../domain/programming/rule-pack.ts';
import { ok } from '../domain/shared/result.ts';
import { type Answer, type DeskContext, refuse, refuseStorage } from './desk-context.ts';
import { dropKeysOfGone, signInRefusal } from './people-commands.ts';

export async function readShop(context: DeskContext): Answer<ChannelOutput<'shop:read'>> {
  return ok({ revision: context.store.shop()?.revision ?? 0, shop: context.shop() });
}

type Problem = { readonly field: string; readonly sentence: string };

/** Rules over the settings as a whole: somebody must be able to change them, and names of people must tell them apart. */
function shopProblems(shop: Shop): readonly Problem[] {
  const problems: Problem[] = [];
  if (!shop.people.some((person) => person.role === 'manager' && person.isActive))
    problems.push({
      field: 'people',
      sentence: 'At least one manager must be active, or nobody could change these settings again.',
    });
  const names = shop.people.map((person) => person.name.trim().toLowerCase());
  names.forEach((name, index) => {
    if (names.indexOf(name) !== index)
      problems.push({
        field: `people.${index}.name`,
        sentence: 'Two people have this name. Add something that tells them apart.',
      });
  });
  if (shop.rulePacks.some(({ id }) => id !== generalPack.id) || shop.rulePacks.length > 1)
    problems.push({ field: 'rulePacks', sentence: `There is one rule pack, and it is called “${generalPack.id}”.` });
  const ids = [...shop.people, ...shop.checklist, ...shop.fundingPlans].map((entry) => entry.id);
  if (new Set(ids).size !== ids.length)
    problems.push({ field: '', sentence: 'Two entries have the same identity. Add the last one again.' });
  return problems;
}

/** People and checks that records refer to are switched off, not removed. */
function removalProblems(context: DeskContext, before: Shop, after: Shop): readonly Problem[] {
  const removed = [
    ...before.people
      .filter((person) => !after.people.some((other) => other.id === person.id))
      .map(({ id, name }) => ({ id, name, field: 'people' })),
    ...before.checklist
      .filter((check) => !after.checklist.some((other) => other.id === check.id))
      .map(({ id, title }) => ({ id, name: title, field: 'checklist' })),
    ...before.fundingPlans
      .filter((plan) => !after.fundingPlans.some((other) => other.id === plan.id))
      .map(({ id, name }) => ({ id, name, field: 'fundingPlans' })),
  ];
  // Writing out the whole fleet is for the rare removal, not for every change of a rate.
  if (removed.length === 0) return [];
  const vehicles = [...context.store.vehicles().values()].map((kept) => JSON.stringify(kept.data));
  return removed
    .filter(({ id }) => vehicles.some((text) => text.includes(`"${id}"`)))
    .map(({ field, name }) => ({
      field,
      sentence:
        field === 'fundingPlans'
          ? `“${name}” stands in the records of vehicles. Name another plan at their purchase first, or keep it.`
          : `“${name}” stands in the records of vehicles. Switch it off instead of removing it.`,
    }));
}

/** Kinds of codes and filing rules that requests name: a kind is switched off, a rule stays. */
function codeRemovalProblems(context: DeskContext, before: Shop, after: Shop): readonly Problem[] {
  const goneOf = <Entry extends { readonly id: string }>(was: readonly Entry[], is: readonly Entry[]) =>
    was.filter(({ id }) => !is.some((other) => other.id === id));
  const kinds = goneOf(before.codeKinds, after.codeKinds);
  const rules = goneOf(before.filingRules, after.filingRules);
  if (kinds.length + rules.length === 0) return [];
  const requests = [...context.store.vehicles().values()].flatMap((kept) => kept.data.codeRequests);
  return [
    ...kinds
      .filter(({ id }) => requests.some(({ kind }) => kind === id))
      .map(({ name }) => ({
        field: 'codeKinds',
        sentence: `Codes of the kind “${name}” stand in the records of vehicles. Switch it off instead of removing it.`,
      })),
    ...rules
      .filter(({ id }) => requests.some(({ filing }) => filing?.schemeId === id))
      .map(({ name }) => ({
        field: 'filingRules',
        sentence: `Requests in the records of vehicles name “${name}”. Keep it.`,
      })),
  ];
}

/**
 * Each pack that differs from the one in force gets the next version and today's day. Versions that plans were made from are never used
 * twice, also not after going back to the pack that the program comes with.
 */
function countedUp(context: DeskContext, changed: Shop): Shop['rulePacks'] {
  const before = currentPack(context.shop());
  return changed.rulePacks.map((pack) => {
    const content = (one: RulePack) => JSON.stringify({ ...one, version: 0, changedOn: '' });
    if (content(pack) === content(before)) return before;
    const used = [...context.store.vehicles().values()].flatMap((kept) =>
      kept.data.jobs.filter(({ plan }) => plan.packId === pack.id).map(({ plan }) => plan.packVersion),
    );
    return { ...pack, version: Math.max(before.version, ...used) + 1, changedOn: context.today() };
  });
}

export async function changeShop(
  context: DeskContext,
  input: ChannelInput<'shop:change'>,
): Answer<ChannelOutput<'shop:change'>> {
  const before = context.shop();
  const changed: Shop = { ...before, [input.change.part]: input.change.value };
  const after = input.change.part === 'rulePacks' ? { ...changed, rulePacks: countedUp(context, changed) } : changed;
  const problems = [
    ...shopProblems(after),
    ...removalProblems(context, before, after),
    ...codeRemovalProblems(context, before, after),
  ];
  if (problems.length > 0) return refuse('refused', '', problems);
  const refusal = signInRefusal(context, input.change.part, after);
  if (refusal !== null) return refusal;
  const saved = await context.store.saveShop(after, input.baseRevision);
  if (!saved.ok) return refuseStorage(saved.error);
  if (input.change.part === 'people') await dropKeysOfGone(context);
  context.deps.emit('lot:all-changed', {});
  return ok({ view: { revision: saved.value.revision, shop: saved.value.data }, desk: context.desk() });
}

export async function setPerson(
  context: DeskContext,
  input: ChannelInput<'desk:set-person'>,
): Answer<ChannelOutput<'desk:set-person'>> {
  const person = context.shop().people.find((candidate) => candidate.id === input.personId && candidate.isActive);
  if (!person) return refuse('not-found');
  if (context.signIn.rules().wantsSignIn && context.signedIn()?.personId !== person.id)
    return refuse('sign-in', 'Choose the name in the list of names and enter the PIN or pass phrase.');
  if (context.signedIn() !== null && context.signedIn()?.personId !== person.id) context.signIn.lock('other-person');
  context.deps.deskSettings.change({ personId: person.id });
  // What one person did is not for the next one to take back unseen.
  context.undo.clear();
  context.deps.emit('lot:all-changed', {});
  return ok(context.desk());
}

export async function setTheme(
  context: DeskContext,
  input: ChannelInput<'desk:set-theme'>,
): Answer<ChannelOutput<'desk:set-theme'>> {
  context.deps.deskSettings.change({ theme: input.theme });
  context.deps.outside.applyTheme(input.theme);
  return ok(context.desk());
}
