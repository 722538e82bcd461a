// The table role × channel × field with every state of signing in: who is answered, and which fields of the answer leave for whom. A channel
// or field that has no place in the tables fails here.
import { cp, mkdtemp, readdir, readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ChannelName, channels } from '../../app/contract/channels.ts';
import type { Role } from '../../app/domain/fleet/shop.ts';
import { type ChannelNeed, judgeCall, listedNeeds, needOf } from '../../app/services/judge-call.ts';
import { openTestDesk, type TestDesk } from '../helpers/open-test-desk.ts';
import { fieldsThatLeave, type Seen } from './fields-that-leave.ts';
import { leavesOf, valuesAtLeaves } from './leaves-of-schema.ts';

const names = Object.keys(channels) as ChannelName[];
const roles: readonly Role[] = ['manager', 'technician', 'sales'];

/** What must be open before each channel is answered. By hand, so that a new one has to be thought of here. */
const needs: Readonly<Record<ChannelNeed, string>> = {
  nothing: `desk:read desk:set-theme people:sign-in people:wait people:lock people:active people:bring-back-keys fleet:choose
    fleet:take-over`,
  work: `desk:set-person people:change-secret people:give-secret people:take-secret lot:read vehicle:open vehicle:take-in vehicle:change
    vehicle:withdraw vehicle:history attachment:add attachment:read attachment:open cases:find edit:undo edit:redo programming:pack programming:routes next-jobs:read codes:usual
    waiting:read waiting:export sheet:preview sheet:print sheet:open sheet:show-folder sheet:preview-fleet sheet:make sheet:cancel
    sheet:choice sheet:find-mark shop:logo table:export table:show-folder vault:state vault:lock vault:codes vault:hide fleet:restore-trouble
    fleet:settle-trouble fleet:back-up sample:open sample:leave sample:show-put-aside program:read program:report`,
  money: `vehicle:what-if money:read money:export money:show-folder shop:read shop:change shop:set-logo calendar:places
    calendar:suggest-holidays archive:write archive:size archive:open list:look list:try list:take-in safety:read safety:preview-trouble safety:preview-backup
    safety:preview-vehicle safety:restore-all safety:restore-vehicle safety:choose-second safety:leave-second
    sample:begin-again`,
  codes: `vault:make vault:unlock vault:put-code vault:look vault:copy vault:destroy vault:add-person vault:remove-person
    vault:change-pass-phrase vault:recover vault:new-recovery-key vault:start-anew`,
};
const needByHand = new Map(
  Object.entries(needs).flatMap(([need, list]) => list.split(/\s+/).map((name) => [name, need] as const)),
);

/** Whose answers are made of the fields below, or hold no field of a record. */
const answers: Readonly<Record<string, string>> = {
  desk: `desk:set-person desk:set-theme people:sign-in people:lock people:change-secret people:give-secret people:take-secret
    people:bring-back-keys vehicle:withdraw edit:undo edit:redo fleet:choose fleet:restore-trouble fleet:settle-trouble fleet:take-over
    fleet:back-up sample:open sample:leave`,
  view: 'vehicle:take-in vehicle:change attachment:add',
  'one file of a record, by whom it is for': 'attachment:read attachment:open',
  'the picture that stands on every sheet': 'shop:logo',
  'its own words, by kind of sheet': 'sheet:preview sheet:preview-fleet sheet:find-mark',
  'names of files and counts': `waiting:export table:export sheet:print sheet:open sheet:show-folder sheet:make sheet:cancel
    sheet:choice table:show-folder people:wait people:active program:read program:report
    sample:show-put-aside`,
  'rules of programming and counts': 'programming:pack programming:routes',
  'the vault, whose own tests say who may look': needs.codes.concat(' vault:state vault:lock vault:hide'),
  'for who sees money alone': needs.money,
};

describe('what each channel needs', () => {
  it('is written out for every channel, and is what the program goes by', () => {
    expect(Object.fromEntries(names.map((name) => [name, needOf(name)]))).toEqual(Object.fromEntries(needByHand));
    expect(listedNeeds.filter((name) => !(name in channels))).toEqual([]);
  });

  const states = [
    { what: 'a locked desk', isLocked: true, isSignedIn: false, moneyIsOpen: false },
    { what: 'an open desk', isLocked: false, isSignedIn: false, moneyIsOpen: true },
    { what: 'an open desk where money waits for signing in', isLocked: false, isSignedIn: false, moneyIsOpen: false },
    { what: 'somebody who has signed in', isLocked: false, isSignedIn: true, moneyIsOpen: true },
  ] as const;
  const sees: Readonly<Record<Role, readonly ChannelNeed[]>> = {
    manager: ['work', 'money', 'codes'],
    technician: ['work', 'codes'],
    sales: ['work'],
  };

  it.each(states.flatMap((state) => roles.map((role) => ({ ...state, role }))))(
    'decides about $role at $what',
    ({ role, isLocked, isSignedIn, moneyIsOpen }) => {
      const open = (['work', 'money', 'codes'] as const).filter(
        (part) =>
          sees[role].includes(part) &&
          !isLocked &&
          (isSignedIn || part === 'work' || (part === 'money' && moneyIsOpen)),
      );
      for (const name of names) {
        const need = needByHand.get(name) ?? '';
        const mayByRole = (channels[name].roles as readonly Role[]).includes(role);
        const expected = isLocked
          ? need === 'nothing'
            ? 'answered'
            : 'sign-in'
          : !mayByRole
            ? 'not-allowed'
            : need === 'nothing' || open.some((part) => part === need)
              ? 'answered'
              : 'sign-in';
        const judged = judgeCall(name, { role, isLocked, open, hasSecret: true });
        expect([name, judged?.code ?? 'answered']).toEqual([name, expected]);
      }
    },
  );

  it('lets whoever has no PIN reach the vault, which asks for a pass phrase of its own', () => {
    const desk = { role: 'manager', isLocked: false, open: ['work', 'money'], hasSecret: false } as const;
    expect(judgeCall('vault:unlock' as ChannelName, desk)).toBeNull();
  });
});

describe('the fields of every answer', () => {
  it.each(Object.entries(fieldsThatLeave))(
    'of %s have each their place in the table, and no place is without its field',
    (name, table) => {
      const listed = Object.entries(table).flatMap(([place, byWho]) =>
        Object.values(byWho).flatMap((fields) =>
          fields.split(' ').map((field) => (place === '' ? field : `${place}.${field}`)),
        ),
      );
      expect(listed.toSorted()).toEqual(leavesOf(channels[name as ChannelName].output));
    },
  );

  it('are looked at for every channel', () => {
    const known = new Set([
      ...Object.keys(fieldsThatLeave),
      ...Object.values(answers).flatMap((list) => list.split(/\s+/)),
    ]);
    expect(names.filter((name) => !known.has(name))).toEqual([]);
  });
});

describe('every service', () => {
  it('asks the desk what may be seen, never the role alone: the role does not say who has signed in', async () => {
    const folder = join(import.meta.dirname, '..', '..', 'app', 'services');
    const asksRole: string[] = [];
    for (const file of await readdir(folder)) {
      if (file === 'desk-context.ts' || file === 'role-rules.ts') continue;
      if (/\brightsOf\(/.test(await readFile(join(folder, file), 'utf8'))) asksRole.push(file);
    }
    expect(asksRole, 'Use context.rights(): it knows what signing in has opened.').toEqual([]);
  });
});

type Viewer = {
  readonly what: string;
  readonly role: Role;
  readonly sees: readonly Seen[];
  readonly isSignedIn: boolean;
  readonly rules: object;
};

const openRules = { wantsSignIn: false, moneyNeedsSignIn: false };
const moneyRules = { wantsSignIn: false, moneyNeedsSignIn: true };
const wantRules = { wantsSignIn: true, moneyNeedsSignIn: true };
const workshop: readonly Seen[] = ['all', 'partPrices', 'forecast', 'codes'];
const everything: readonly Seen[] = [...workshop, 'money', 'asking'];
const viewers: readonly Viewer[] = [
  { what: 'a manager at an open desk', role: 'manager', sees: everything, isSignedIn: false, rules: openRules },
  { what: 'a manager whose money waits', role: 'manager', sees: workshop, isSignedIn: false, rules: moneyRules },
  { what: 'a manager who has signed in', role: 'manager', sees: everything, isSignedIn: true, rules: wantRules },
  { what: 'a technician at an open desk', role: 'technician', sees: workshop, isSignedIn: false, rules: openRules },
  { what: 'a technician who has signed in', role: 'technician', sees: workshop, isSignedIn: true, rules: wantRules },
  { what: 'sales at an open desk', role: 'sales', sees: ['all', 'asking'], isSignedIn: false, rules: moneyRules },
  { what: 'sales who have signed in', role: 'sales', sees: ['all', 'asking'], isSignedIn: true, rules: wantRules },
];

/** Path → who sees it, with a record's keys taken together as the schema does. */
function seenAt(name: string, path: string): Seen | undefined {
  const table = fieldsThatLeave[name] ?? {};
  for (const one of [path, path.replace(/\.[^.]+$/, '{}')]) {
    const [place, field] = one.includes('.') ? [one.replace(/\.[^.]+$/, ''), one.replace(/^.*\./, '')] : ['', one];
    for (const [who, fields] of Object.entries(table[place] ?? {}))
      if (fields.split(' ').includes(field)) return who as Seen;
  }
  return undefined;
}

const isBlank = (value: unknown) => value === null || value === 0 || value === '' || value === undefined;

describe('on the sample fleet', () => {
  const secret = 'lantern under copper bridge';
  let desk: TestDesk;
  let personOf: Readonly<Record<Role, string>>;

  /** Seats the viewer as the manager would have it: the rules first, then who is at the desk. */
  async function seat({ role, isSignedIn, rules }: Pick<Viewer, 'role' | 'isSignedIn' | 'rules'>): Promise<void> {
    await desk.ask('people:sign-in', { personId: personOf.manager, secret });
    const { revision, shop } = await desk.ask('shop:read', {});
    const value = { ...shop.signIn, ...rules };
    await desk.ask('shop:change', { baseRevision: revision, change: { part: 'signIn', value } });
    if (isSignedIn) await desk.ask('people:sign-in', { personId: personOf[role], secret });
    else {
      await desk.ask('people:lock', {});
      if (!value.wantsSignIn) await desk.ask('desk:set-person', { personId: personOf[role] });
    }
  }

  beforeAll(async () => {
    const folder = await mkdtemp(join(tmpdir(), 'lotwright-access-'));
    await cp(join(import.meta.dirname, '..', '..', 'sample-fleet', 'current'), join(folder, 'fleet'), {
      recursive: true,
    });
    desk = await openTestDesk(folder);
    const { people } = await desk.ask('desk:read', {});
    const idOf = (role: Role) => people.find((person) => person.role === role && person.isActive)?.id ?? '';
    personOf = { manager: idOf('manager'), technician: idOf('technician'), sales: idOf('sales') };
    await desk.ask('people:give-secret', { personId: personOf.manager, secret });
    await desk.ask('people:sign-in', { personId: personOf.manager, secret });
    for (const role of ['technician', 'sales'] as const)
      await desk.ask('people:give-secret', { personId: personOf[role], secret });
  }, 120_000);
  afterAll(() => desk.discard());

  /** What left for whoever is at the desk, as channel, path and value. */
  async function whatLeaves(): Promise<readonly (readonly [string, string, unknown])[]> {
    const rows = await desk.ask('lot:read', {});
    const told: [string, unknown][] = [
      ['desk:read', await desk.ask('desk:read', {})],
      ['lot:read', rows],
    ];
    const unsold = rows.filter((row) => row.held.now.standing !== 'sold');
    const sold = rows.filter((row) => row.held.now.standing === 'sold').slice(0, 3);
    for (const { id } of [...unsold, ...sold]) told.push(['vehicle:open', await desk.ask('vehicle:open', { id })]);
    for (const name of ['next-jobs:read', 'waiting:read'] as const) {
      const answer = await desk.session.answer(name, {});
      if (answer.ok) told.push([name, answer.value]);
    }
    return told.flatMap(([name, value]) => valuesAtLeaves(value).map(([path, leaf]) => [name, path, leaf] as const));
  }

  it.each(viewers)(
    '$what is sent nothing but what is theirs to see',
    async (viewer) => {
      await seat(viewer);
      const left = await whatLeaves();
      expect(left.filter(([name]) => name === 'vehicle:open').length).toBeGreaterThan(100);
      const wrong = left.filter(([name, path, value]) => {
        if (isBlank(value)) return false;
        const seen = seenAt(name, path);
        return seen === undefined || !viewer.sees.includes(seen);
      });
      expect(wrong.slice(0, 5)).toEqual([]);
      // And what is theirs does leave: for each kind of field somewhere.
      const kinds = new Set(left.filter(([, , value]) => !isBlank(value)).map(([name, path]) => seenAt(name, path)));
      expect([...kinds].toSorted()).toEqual([...viewer.sees].toSorted());
    },
    120_000,
  );

  it.each(roles)('a locked desk, last used by %s, is sent the list of names and nothing else', async (role) => {
    await seat({ role, isSignedIn: true, rules: wantRules });
    await desk.ask('people:lock', {});
    const from = desk.emitted.length;
    const locked = valuesAtLeaves(await desk.ask('desk:read', {})).filter(([, value]) => !isBlank(value));
    const allowed =
      /^(appVersion|today|theme|fleetName|isSample|sample\.(isOwnCopy|canOpen)|people\[\]\..*|person\..*|seesMoney|canTakeOver|signIn\..*)$/;
    expect(locked.map(([path]) => path).filter((path) => !allowed.test(path))).toEqual([]);
    const answered: string[] = [];
    for (const name of names) {
      if (needByHand.get(name) === 'nothing') continue;
      const answer = await desk.session.answer(name, {} as never);
      if (answer.ok || answer.error.code !== 'sign-in') answered.push(name);
    }
    expect(answered).toEqual([]);
    expect(desk.emitted.slice(from).filter(({ name }) => name.startsWith('lot:'))).toEqual([]);
  });

  it.each(['technician', 'sales'] as const)('a %s is refused every channel that is not theirs', async (role) => {
    await seat({ role, isSignedIn: false, rules: openRules });
    for (const name of names) {
      if ((channels[name].roles as readonly Role[]).includes(role)) continue;
      expect([name, (await desk.refused(name, {} as never)).code]).toEqual([name, 'not-allowed']);
    }
  });
});
