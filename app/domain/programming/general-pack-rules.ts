// The order rules of the general rule pack, as data, each with its reason and source. The maker's own order comes before all of them.
import {
  exchanged,
  fittedKinds,
  foreign,
  identityKinds,
  kindsOtherThan,
  modulesOf,
  rule,
  stepsChosen,
} from './general-pack-words.ts';
import type { JobCondition, OrderRule, Reminder } from './rule-pack.ts';

const writes = ['write-software', 'write-vin', 'write-config'];
const bodyIdentity = ['body-takes-identity', 'body-starts-identity'];
const matching = [...bodyIdentity, 'take-identity', 'reteach-keys', 'teach-keys', 'enter-mileage'];
const settings = ['zero-brakes', 'adapt-transmission', 'calibrate-camera'];

const securing: readonly OrderRule[] = [
  rule({
    id: 'scan-first',
    before: stepsChosen(['scan-before']),
    after: stepsChosen([
      'compare-vins',
      'hv-refer-out',
      'hv-release',
      'open-gateway',
      'save-old',
      'connect-supply',
      'cycle-ignition',
    ]),
    reason: 'Scan everything first: each later step can set or lose codes.',
  }),
  rule(
    {
      id: 'hv-hand-over-first',
      before: stepsChosen(['hv-refer-out']),
      after: stepsChosen(['hv-release']),
      reason: 'The qualified person can only release what was handed over.',
    },
    { modules: 'same' },
  ),
  rule({
    id: 'hv-release-before-power',
    before: stepsChosen(['hv-release']),
    after: stepsChosen(['connect-supply', 'cycle-ignition']),
    reason: 'Nothing is switched on beside a high-voltage system that nobody has answered for.',
  }),
  rule({
    id: 'gateway-access-first',
    before: stepsChosen(['open-gateway']),
    after: stepsChosen([
      'save-old',
      'update-software',
      'compare-vin-inside',
      ...writes,
      ...bodyIdentity,
      'take-identity',
      'clear-codes',
    ]),
    reason: 'A secured gateway lets nothing through before it is unlocked.',
  }),
  rule(
    {
      id: 'save-while-powered',
      before: stepsChosen(['save-old']),
      after: stepsChosen(['lead-off']),
      reason: 'In the vehicle the old module can only be read while it has power.',
    },
    { letsGoWhen: 'in-vehicle-routes-failed' },
  ),
  rule(
    {
      id: 'save-before-take-out',
      before: stepsChosen(['save-old']),
      after: stepsChosen(['take-out']),
      reason:
        'Read and save the old module before it leaves the vehicle; only where no route in the vehicle reads it, on the bench.',
    },
    { modules: 'same', letsGoWhen: 'in-vehicle-routes-failed' },
  ),
];

const exchanging: readonly OrderRule[] = [
  rule(
    {
      id: 'out-before-in',
      before: stepsChosen(['take-out']),
      after: stepsChosen(['have-repaired', 'fit']),
      reason: 'The old module has to come out first.',
    },
    { modules: 'same' },
  ),
  rule(
    {
      id: 'copy-before-fit',
      before: stepsChosen(['clone-data']),
      after: stepsChosen(['fit']),
      reason: 'The copy is made and compared on the bench, before the replacement talks to the vehicle.',
    },
    { modules: 'same' },
  ),
  rule({
    id: 'battery-on-before-supply',
    before: stepsChosen(['lead-on']),
    after: stepsChosen(['connect-supply', 'look-for-locks', 'radio-code']),
    reason: 'The supply supports the battery; without it the vehicle is not as the maker means it to be for a write.',
  }),
];

const writing: readonly OrderRule[] = [
  rule(
    {
      id: 'software-first',
      before: stepsChosen(['write-software']),
      after: stepsChosen(['write-vin', 'write-config']),
      reason: 'New software can set back what was written before it.',
    },
    { modules: 'same' },
  ),
  rule(
    {
      id: 'vin-before-configuration',
      before: stepsChosen(['write-vin']),
      after: stepsChosen(['write-config']),
      reason: 'The configuration is looked up, and often locked, by the VIN in the module.',
    },
    { modules: 'same' },
  ),
  rule(
    {
      id: 'configuration-before-matching',
      before: stepsChosen(['write-config', 'compare-vin-inside']),
      after: stepsChosen([
        ...bodyIdentity,
        'take-identity',
        'enter-mileage',
        'radio-code',
        ...settings,
        'teach-battery',
      ]),
      reason: 'A module that does not know the vehicle’s equipment refuses to be matched or set.',
    },
    { modules: 'same' },
  ),
  rule({
    id: 'gateway-written-first',
    before: stepsChosen(['write-config'], modulesOf(['gateway'])),
    after: stepsChosen(writes, modulesOf(kindsOtherThan('gateway'))),
    reason: 'Everything else is reached through the gateway.',
  }),
  rule({
    id: 'body-written-before-others',
    before: stepsChosen(['write-config'], modulesOf(['body'])),
    after: stepsChosen(writes, modulesOf(kindsOtherThan('gateway', 'body'))),
    reason: 'The body module wakes the others and holds the list of equipment that they are checked against.',
  }),
  rule({
    id: 'powertrain-before-transmission',
    before: stepsChosen(['write-config'], modulesOf(['powertrain'])),
    after: stepsChosen(writes, modulesOf(['transmission'])),
    reason: 'The transmission takes engine data and the VIN from the powertrain module.',
  }),
];

const bodyForeign: JobCondition = { has: modulesOf(['body'], foreign) };
const powertrainForeign: JobCondition = { has: modulesOf(['powertrain'], foreign) };
const someKeyKept: JobCondition = { has: modulesOf(['keys'], ['kept']) };
const powertrainOnly: JobCondition = { all: [powertrainForeign, { not: bodyForeign }] };

const identities: readonly OrderRule[] = [
  rule(
    {
      id: 'both-vins-before-a-new-identity',
      before: stepsChosen(['write-vin', 'write-config'], modulesOf(['powertrain'])),
      after: stepsChosen(['body-starts-identity']),
      reason: 'Body and powertrain modules must tell the same VIN before a new identity is started between them.',
    },
    { when: { all: [bodyForeign, powertrainForeign] } },
  ),
  rule({
    id: 'body-identity-first',
    before: stepsChosen(bodyIdentity),
    after: stepsChosen(['take-identity', 'reteach-keys', 'teach-keys']),
    reason: 'The body module hands the identity on to the others, so it must have it first.',
  }),
  rule({
    id: 'reader-before-keys',
    before: stepsChosen(['take-identity'], modulesOf(['immobiliser-receiver', 'instrument-cluster'])),
    after: stepsChosen(['reteach-keys', 'teach-keys']),
    reason:
      'Keys are read by the receiver, and in many vehicles known by the cluster: both must be matched before a key can be taught.',
  }),
  rule({
    id: 'steering-lock-before-powertrain',
    before: stepsChosen(['take-identity'], modulesOf(['steering-lock'])),
    after: stepsChosen(['take-identity'], modulesOf(['powertrain'])),
    reason: 'The powertrain module is only released once the steering lock has answered.',
  }),
  rule({
    id: 'kept-keys-before-powertrain',
    before: stepsChosen(['reteach-keys']),
    after: stepsChosen(['take-identity'], modulesOf(['powertrain'])),
    reason: 'The powertrain module is matched with a key that the vehicle knows.',
  }),
  rule(
    {
      id: 'new-keys-before-powertrain-when-body-is-new-too',
      before: stepsChosen(['teach-keys']),
      after: stepsChosen(['take-identity'], modulesOf(['powertrain'])),
      reason:
        'Nobody has kept the identity: keys are taught to the body module first, and the powertrain module is matched with one of them.',
    },
    { when: { all: [bodyForeign, powertrainForeign] } },
  ),
  rule(
    {
      id: 'powertrain-before-added-keys',
      before: stepsChosen(['take-identity'], modulesOf(['powertrain'])),
      after: stepsChosen(['teach-keys']),
      reason:
        'Body module and an old key still hold the identity: match the powertrain module with them before keys are added.',
    },
    { when: { all: [powertrainOnly, someKeyKept] } },
  ),
  rule(
    {
      id: 'new-keys-before-powertrain-when-none-is-known',
      before: stepsChosen(['teach-keys']),
      after: stepsChosen(['take-identity'], modulesOf(['powertrain'])),
      reason: 'No key that the vehicle knows is left: the powertrain module can only be matched after one is taught.',
    },
    { when: { all: [powertrainOnly, { not: someKeyKept }] } },
  ),
];

const proving: readonly OrderRule[] = [
  rule({
    id: 'locks-looked-for-before-code',
    before: stepsChosen(['look-for-locks']),
    after: stepsChosen(['radio-code', 'cycle-ignition']),
    reason: 'Expect second locks: a radio that lost power asks for its own code.',
  }),
  rule(
    {
      id: 'code-before-radio-trial',
      before: stepsChosen(['radio-code']),
      after: stepsChosen(['try-functions']),
      reason: 'A locked radio cannot be tried. Nothing else waits for its code.',
    },
    { modules: 'same' },
  ),
  rule({
    id: 'supply-on-before-off',
    before: stepsChosen(['connect-supply']),
    after: stepsChosen(['supply-off']),
    reason: 'Only a supply that was connected can be taken off.',
  }),
  rule({
    id: 'calibration-after-all-writes',
    before: stepsChosen([...writes, ...bodyIdentity, 'take-identity', 'zero-brakes']),
    after: stepsChosen(['calibrate-camera']),
    reason:
      'Writing to other modules and setting their zero points changes what the camera or radar is calibrated against.',
  }),
  rule({
    id: 'battery-taught-without-supply',
    before: stepsChosen(['supply-off']),
    after: stepsChosen(['teach-battery']),
    reason: 'The sensor has to see the battery by itself.',
  }),
  rule({
    id: 'work-before-ignition-cycle',
    before: stepsChosen([
      'lead-on',
      'update-software',
      'compare-vin-inside',
      ...writes,
      ...matching,
      ...settings,
      'supply-off',
      'teach-battery',
    ]),
    after: stepsChosen(['cycle-ignition']),
    reason: 'The modules take up everything that was written when they wake again.',
  }),
  rule({
    id: 'cycle-then-clear',
    before: stepsChosen(['cycle-ignition']),
    after: stepsChosen(['clear-codes']),
    reason: 'Codes that the work itself has set come back if they are cleared before the modules have slept.',
  }),
  rule({
    id: 'clear-then-scan',
    before: stepsChosen(['clear-codes']),
    after: stepsChosen(['scan-after']),
    reason: 'Only a scan after clearing shows what comes back.',
  }),
  rule({
    id: 'all-proven-before-release',
    before: stepsChosen(['try-every-key', 'try-body-functions', 'try-functions'], modulesOf(kindsOtherThan('radio'))),
    after: stepsChosen(['release-old']),
    reason:
      'Keep every old module until all others are proven too: the fault may lie in another one than it seems. A locked radio holds nothing up.',
  }),
  rule({
    id: 'scan-then-try',
    before: stepsChosen(['scan-after']),
    after: stepsChosen(['try-every-key', 'try-body-functions', 'try-functions', 'release-old']),
    reason: 'A silent module or a code that came back makes the trial pointless.',
  }),
];

export const generalRules: readonly OrderRule[] = [...securing, ...exchanging, ...writing, ...identities, ...proving];

const identityForeign: JobCondition = { has: modulesOf(identityKinds, foreign) };

export const generalReminders: readonly Reminder[] = [
  {
    id: 'name-the-keys',
    when: { all: [identityForeign, { not: { has: modulesOf(['keys']) } }] },
    sentence: 'Name the keys too, as kept or new: whether they are taught, and when, depends on it.',
  },
  {
    id: 'name-the-powertrain',
    when: { all: [bodyForeign, { not: { has: modulesOf(['powertrain']) } }] },
    sentence:
      'Name the powertrain module too. It is taken as kept here; if it is also exchanged, the order is another one.',
  },
  {
    id: 'name-the-body',
    when: { all: [powertrainForeign, { not: { has: modulesOf(['body']) } }] },
    sentence: 'Name the body module too. It is taken as kept here; if it is also exchanged, the order is another one.',
  },
  {
    id: 'name-the-radio',
    when: {
      all: [{ has: modulesOf(fittedKinds, exchanged) }, { not: { has: modulesOf(['radio']) } }],
    },
    sentence:
      'The battery comes off in this job. If the radio has a code of its own, name it as kept so that its code is asked for in time.',
  },
];
