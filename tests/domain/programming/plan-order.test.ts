// The whole order that the general pack gives for combinations of modules, with why. Each list was reasoned out by hand from the rules'
// reasons; a change of the pack that moves a step has to be argued here.
import { describe, expect, it } from 'vitest';
import { generalPack } from '../../../app/domain/programming/general-pack.ts';
import type { PlanModule } from '../../../app/domain/programming/job-condition.ts';
import { moduleKindSchema } from '../../../app/domain/programming/module-kind.ts';
import { moduleOriginSchema } from '../../../app/domain/programming/module-origin.ts';
import { makePlan, type Plan } from '../../../app/domain/programming/plan.ts';

/** 'body new, keys kept' as modules whose id is their kind; a second one of a kind is named by its origin too: 'keys-new'. */
function modulesOf(words: string): readonly PlanModule[] {
  const seen = new Set<string>();
  return words.split(', ').map((pair) => {
    const [kindWord, originWord] = pair.split(' ');
    const kind = moduleKindSchema.parse(kindWord);
    const origin = moduleOriginSchema.parse(originWord);
    const id = seen.has(kind) ? `${kind}-${origin}` : kind;
    seen.add(kind);
    return { id, kind, origin, name: kind };
  });
}

function planFor(words: string): Plan {
  return makePlan({ modules: modulesOf(words), pack: generalPack, makerOrder: null });
}

type Case = { readonly modules: string; readonly why: string; readonly order: string };

const cases: readonly Case[] = [
  {
    modules: 'body new, powertrain kept, keys kept',
    why: 'the kept powertrain module holds the identity, so the body module learns it there before it is taught the kept keys',
    order: `scan-before compare-vins save-old--body
      lead-off take-out--body fit--body lead-on look-for-locks
      connect-supply write-software--body write-vin--body write-config--body
      body-takes-identity--body reteach-keys--keys
      supply-off cycle-ignition clear-codes scan-after try-every-key try-body-functions--body try-functions--powertrain
      release-old--body`,
  },
  {
    modules: 'body new, powertrain new, keys new',
    why: 'nobody has kept the identity: both are written, the body module starts it anew, keys are taught, the powertrain module comes last',
    order: `scan-before compare-vins save-old--body save-old--powertrain
      lead-off take-out--body fit--body take-out--powertrain fit--powertrain lead-on look-for-locks
      connect-supply write-software--body write-vin--body write-config--body
      write-software--powertrain write-vin--powertrain write-config--powertrain
      body-starts-identity--body teach-keys--keys take-identity--powertrain
      supply-off cycle-ignition clear-codes scan-after try-every-key try-body-functions--body try-functions--powertrain
      release-old--body release-old--powertrain`,
  },
  {
    modules: 'powertrain new, body kept, keys kept, keys new',
    why: 'body module and an old key hold the identity, so the powertrain module is matched before keys are added',
    order: `scan-before compare-vins save-old--powertrain
      lead-off take-out--powertrain fit--powertrain lead-on look-for-locks
      connect-supply write-software--powertrain write-vin--powertrain write-config--powertrain
      take-identity--powertrain teach-keys--keys-new
      supply-off cycle-ignition clear-codes scan-after try-every-key try-functions--powertrain try-body-functions--body
      release-old--powertrain`,
  },
  {
    modules: 'powertrain new, body kept, keys new',
    why: 'no key that the vehicle knows is left, so one is taught before the powertrain module can be matched',
    order: `scan-before compare-vins save-old--powertrain
      lead-off take-out--powertrain fit--powertrain lead-on look-for-locks
      connect-supply write-software--powertrain write-vin--powertrain write-config--powertrain
      teach-keys--keys take-identity--powertrain
      supply-off cycle-ignition clear-codes scan-after try-every-key try-functions--powertrain try-body-functions--body
      release-old--powertrain`,
  },
  {
    modules: 'powertrain new, body kept, keys kept',
    why: 'body and keys know each other, so no key is taught',
    order: `scan-before compare-vins save-old--powertrain
      lead-off take-out--powertrain fit--powertrain lead-on look-for-locks
      connect-supply write-software--powertrain write-vin--powertrain write-config--powertrain
      take-identity--powertrain
      supply-off cycle-ignition clear-codes scan-after try-every-key try-functions--powertrain try-body-functions--body
      release-old--powertrain`,
  },
  {
    modules: 'immobiliser-receiver new, keys kept',
    why: 'keys are read through the receiver: it is matched first, and carries neither software nor a VIN of its own',
    order: `scan-before compare-vins save-old--immobiliser-receiver
      lead-off take-out--immobiliser-receiver fit--immobiliser-receiver lead-on look-for-locks
      connect-supply write-config--immobiliser-receiver
      take-identity--immobiliser-receiver reteach-keys--keys
      supply-off cycle-ignition clear-codes scan-after try-every-key try-functions--immobiliser-receiver
      release-old--immobiliser-receiver`,
  },
  {
    modules: 'keys new',
    why: 'nothing is unplugged, so the battery stays on and no old module is kept',
    order: 'scan-before connect-supply teach-keys--keys supply-off cycle-ignition clear-codes scan-after try-every-key',
  },
  {
    modules: 'instrument-cluster used, keys kept, radio kept',
    why: 'a used cluster is checked while it can go back, its mileage is set and noted, and the radio is expected to ask for its code',
    order: `scan-before compare-vins save-old--instrument-cluster check-used--instrument-cluster
      lead-off take-out--instrument-cluster fit--instrument-cluster lead-on look-for-locks
      connect-supply write-software--instrument-cluster write-vin--instrument-cluster write-config--instrument-cluster
      take-identity--instrument-cluster enter-mileage--instrument-cluster radio-code--radio
      supply-off cycle-ignition clear-codes scan-after try-every-key
      try-functions--instrument-cluster try-functions--radio
      release-old--instrument-cluster`,
  },
  {
    modules: 'radio new, body new, gateway new, powertrain kept, keys kept',
    why: 'everything is reached through the gateway and checked against the body module, so they are written in that order however named',
    order: `scan-before compare-vins save-old--radio save-old--body save-old--gateway
      lead-off take-out--radio fit--radio take-out--body fit--body take-out--gateway fit--gateway lead-on look-for-locks
      connect-supply write-software--gateway write-vin--gateway write-config--gateway
      write-software--body write-vin--body write-config--body
      write-software--radio write-vin--radio write-config--radio
      radio-code--radio body-takes-identity--body reteach-keys--keys
      supply-off cycle-ignition clear-codes scan-after try-every-key
      try-functions--radio try-body-functions--body try-functions--gateway try-functions--powertrain
      release-old--radio release-old--body release-old--gateway`,
  },
  {
    modules: 'airbag new',
    why: 'after the negative lead the wait of the maker comes before anything is touched',
    order: `scan-before compare-vins save-old--airbag
      lead-off wait-airbag take-out--airbag fit--airbag lead-on look-for-locks
      connect-supply write-software--airbag write-vin--airbag write-config--airbag
      supply-off cycle-ignition clear-codes scan-after try-functions--airbag
      release-old--airbag`,
  },
  {
    modules: 'camera-radar new, brakes new',
    why: 'the camera is calibrated after all writes and after the zero points of the brakes, before the codes are cleared',
    order: `scan-before compare-vins save-old--camera-radar save-old--brakes
      lead-off take-out--camera-radar fit--camera-radar take-out--brakes fit--brakes lead-on look-for-locks
      connect-supply write-software--camera-radar write-vin--camera-radar write-config--camera-radar
      write-software--brakes write-vin--brakes write-config--brakes
      zero-brakes--brakes calibrate-camera--camera-radar
      supply-off cycle-ignition clear-codes scan-after try-functions--camera-radar try-functions--brakes
      release-old--camera-radar release-old--brakes`,
  },
  {
    modules: 'transmission used, powertrain used, body kept, keys kept',
    why: 'the transmission takes engine data and VIN from the powertrain module, so it is written after it although named first',
    order: `scan-before compare-vins save-old--transmission check-used--transmission save-old--powertrain check-used--powertrain
      lead-off take-out--transmission fit--transmission take-out--powertrain fit--powertrain lead-on look-for-locks
      connect-supply write-software--powertrain write-vin--powertrain write-config--powertrain
      write-software--transmission write-vin--transmission write-config--transmission
      take-identity--powertrain
      adapt-transmission--transmission
      supply-off cycle-ignition clear-codes scan-after try-every-key
      try-functions--transmission try-functions--powertrain try-body-functions--body
      release-old--transmission release-old--powertrain`,
  },
  {
    modules: 'body repaired, keys kept',
    why: 'the module comes back with its own data: nothing is written or taught, its VIN is compared, and there is no old one to let go',
    order: `scan-before compare-vins save-old--body
      lead-off take-out--body have-repaired--body fit--body lead-on look-for-locks
      connect-supply compare-vin-inside--body
      supply-off cycle-ignition clear-codes scan-after try-every-key try-body-functions--body`,
  },
  {
    modules: 'body cloned, radio kept',
    why: 'the copy is made on the bench before it is fitted, and answers like the old module, so nothing is matched',
    order: `scan-before compare-vins save-old--body
      lead-off take-out--body clone-data--body fit--body lead-on look-for-locks
      connect-supply compare-vin-inside--body
      radio-code--radio
      supply-off cycle-ignition clear-codes scan-after try-every-key try-body-functions--body try-functions--radio
      release-old--body`,
  },
  {
    modules: 'steering-lock new, powertrain new, body new, keys new',
    why: 'the powertrain module is only released once the steering lock has answered and a key is taught, so it comes last',
    order: `scan-before compare-vins save-old--steering-lock save-old--powertrain save-old--body
      lead-off wait-airbag take-out--steering-lock fit--steering-lock take-out--powertrain fit--powertrain
      take-out--body fit--body lead-on look-for-locks
      connect-supply write-software--body write-vin--body write-config--body write-config--steering-lock
      write-software--powertrain write-vin--powertrain write-config--powertrain
      body-starts-identity--body take-identity--steering-lock teach-keys--keys take-identity--powertrain
      supply-off cycle-ignition clear-codes scan-after try-every-key
      try-functions--steering-lock try-functions--powertrain try-body-functions--body
      release-old--steering-lock release-old--powertrain release-old--body`,
  },
  {
    modules: 'battery-sensor new',
    why: 'the sensor is told its battery after the supply is off, because it has to see the battery alone',
    order: `scan-before compare-vins save-old--battery-sensor
      lead-off take-out--battery-sensor fit--battery-sensor lead-on look-for-locks
      connect-supply write-config--battery-sensor
      supply-off teach-battery--battery-sensor cycle-ignition clear-codes scan-after try-functions--battery-sensor
      release-old--battery-sensor`,
  },
  {
    modules: 'high-voltage new, body kept',
    why: 'the work goes to qualified people, and nothing is switched on before their release',
    order: `scan-before hv-refer-out--high-voltage hv-release--high-voltage
      cycle-ignition clear-codes scan-after try-body-functions--body`,
  },
  {
    modules: 'high-voltage kept, brakes new',
    why: 'work beside a high-voltage system that stays begins after a qualified person has made it safe',
    order: `scan-before compare-vins hv-release--high-voltage save-old--brakes
      lead-off take-out--brakes fit--brakes lead-on look-for-locks
      connect-supply write-software--brakes write-vin--brakes write-config--brakes
      zero-brakes--brakes
      supply-off cycle-ignition clear-codes scan-after try-functions--brakes
      release-old--brakes`,
  },
  {
    modules: 'gateway kept, camera-radar new',
    why: 'a secured gateway that stays is opened before anything is read or written through it',
    order: `scan-before compare-vins open-gateway--gateway save-old--camera-radar
      lead-off take-out--camera-radar fit--camera-radar lead-on look-for-locks
      connect-supply write-software--camera-radar write-vin--camera-radar write-config--camera-radar
      calibrate-camera--camera-radar
      supply-off cycle-ignition clear-codes scan-after try-functions--gateway try-functions--camera-radar
      release-old--camera-radar`,
  },
  {
    modules: 'body kept',
    why: 'where nothing is exchanged, new software in place is what is left to do',
    order: `scan-before connect-supply update-software--body
      supply-off cycle-ignition clear-codes scan-after try-body-functions--body`,
  },
];

describe('the order of programming', () => {
  it.each(cases)('for $modules: $why', ({ modules, order }) => {
    const plan = planFor(modules);
    expect(plan.order).toEqual(order.trim().split(/\s+/));
    expect(plan.contradictions).toEqual([]);
    expect(plan.isComplete).toBe(true);
  });

  it('turns round powertrain module and keys by which modules are new together', () => {
    const placesIn = (words: string, keys: string) => {
      const { order } = planFor(words);
      return order.indexOf('take-identity--powertrain') - order.indexOf(keys);
    };
    expect(placesIn('powertrain new, body kept, keys kept, keys new', 'teach-keys--keys-new')).toBeLessThan(0);
    expect(placesIn('powertrain new, body new, keys kept, keys new', 'teach-keys--keys-new')).toBeGreaterThan(0);
  });

  it('says by which rules a step stands where it stands, each with a reason and a source', () => {
    const plan = planFor('body new, powertrain new, keys new');
    const match = plan.steps.find(({ id }) => id === 'take-identity--powertrain');
    expect(match?.because).toContain('new-keys-before-powertrain-when-body-is-new-too');
    for (const constraint of plan.constraints) {
      expect(constraint.reason).not.toBe('');
      expect(constraint.source).not.toBe('');
    }
  });

  it('reminds of keys and powertrain module that were not named, and changes nothing for it', () => {
    const { reminders, order } = planFor('body new');
    expect(reminders.join(' ')).toMatch(/Name the keys.*Name the powertrain/);
    expect(order).toContain('body-takes-identity--body');
    expect(planFor('body new, powertrain kept, keys kept, radio kept').reminders).toEqual([]);
  });

  it('has the module’s own name in titles, also one with a dollar sign', () => {
    const modules: PlanModule[] = [{ id: 'body', kind: 'body', origin: 'new', name: 'Body $& left' }];
    const plan = makePlan({ modules, pack: generalPack, makerOrder: null });
    expect(plan.steps.map(({ title }) => title)).toContain('Fit Body $& left');
  });

  it('refuses two modules with one id as a fault of the caller', () => {
    const [body] = modulesOf('body new');
    if (!body) throw new Error('no module');
    expect(() => makePlan({ modules: [body, body], pack: generalPack, makerOrder: null })).toThrow(/same id/);
  });
});
