// Steps of the general rule pack that match modules, keys and codes, as data. The maker’s service information and local law come before them.
import { foreign, identityKinds, modulesOf, step } from './general-pack-words.ts';
import type { StepTemplate } from './rule-pack.ts';

const antiTheft: Partial<StepTemplate> = {
  cannotBeUndone: true,
  cautions: ['anti-theft-code', 'supply-voltage', 'never-interrupt'],
  gates: ['ownership-proven', 'code-in-hand', 'keys-present', 'supply-connected'],
};
const bodyAndPowertrainForeign: StepTemplate['when'] = {
  all: [{ has: modulesOf(['body'], foreign) }, { has: modulesOf(['powertrain'], foreign) }],
};

export const matchSteps: readonly StepTemplate[] = [
  step(
    {
      id: 'body-takes-identity',
      stage: 'match',
      scope: 'module',
      fits: modulesOf(['body'], foreign),
      title: 'Let {module} take over the anti-theft identity that the vehicle has kept',
      detail:
        'From the powertrain module that stayed. Every key in hand. Count the tries: some units lock after a few.',
      routes: ['on-vehicle', 'pass-through'],
      typicalMinutes: 30,
      reason: 'The powertrain module that stayed still holds the identity, so the body module learns it from there.',
    },
    { ...antiTheft, when: { not: bodyAndPowertrainForeign } },
  ),
  step(
    {
      id: 'body-starts-identity',
      stage: 'match',
      scope: 'module',
      fits: modulesOf(['body'], foreign),
      title: 'Start the anti-theft identity anew in {module}',
      detail: 'With the code from the maker. Every key in hand. Count the tries: some units lock after a few.',
      routes: ['on-vehicle', 'pass-through'],
      typicalMinutes: 30,
      reason:
        'With body and powertrain modules both foreign to the vehicle, nobody is left to learn the identity from.',
    },
    { ...antiTheft, when: bodyAndPowertrainForeign },
  ),
  step(
    {
      id: 'take-identity',
      stage: 'match',
      scope: 'module',
      fits: modulesOf(
        identityKinds.filter((kind) => kind !== 'body'),
        foreign,
      ),
      title: 'Match {module} to the anti-theft identity of the vehicle',
      detail: 'Count the tries: some units lock after a few. After a failure wait as long as the maker says.',
      routes: ['on-vehicle', 'pass-through', 'bench'],
      typicalMinutes: 20,
      reason: 'Until it is matched the vehicle does not start, or stops again.',
    },
    antiTheft,
  ),
  step(
    {
      id: 'reteach-keys',
      stage: 'match',
      scope: 'module',
      fits: modulesOf(['keys'], ['kept']),
      title: 'Teach {module} to the module that is new to them',
      detail: 'Every key in one go: those that are not shown may be struck off.',
      routes: ['on-vehicle', 'pass-through'],
      typicalMinutes: 20,
      reason: 'The module that knew these keys has been exchanged.',
    },
    { ...antiTheft, when: { has: modulesOf(['body', 'immobiliser-receiver'], foreign) } },
  ),
  step(
    {
      id: 'teach-keys',
      stage: 'match',
      scope: 'module',
      fits: modulesOf(['keys'], foreign),
      title: 'Teach {module} to the vehicle',
      detail:
        'Every key in one go: those that are not shown may be struck off. A used key may be locked to its old vehicle.',
      routes: ['on-vehicle', 'pass-through', 'bench'],
      typicalMinutes: 25,
      reason: 'A key that the vehicle does not know does not start it.',
    },
    {
      ...antiTheft,
      gates: [
        'part-in-hand',
        'used-module-fits',
        'ownership-proven',
        'code-in-hand',
        'keys-present',
        'supply-connected',
      ],
    },
  ),
  step(
    {
      id: 'enter-mileage',
      stage: 'match',
      scope: 'module',
      fits: modulesOf(['instrument-cluster'], foreign),
      title: 'Set and note the mileage shown by {module}',
      detail:
        'Only to the true reading and only where law and maker allow it. Write down both readings: the buyer must be told.',
      routes: ['on-vehicle', 'pass-through', 'bench', 'sent-out'],
      typicalMinutes: 15,
      reason: 'A cluster from elsewhere shows another mileage. A false one is an offence nearly everywhere.',
      source: 'in the United States 49 CFR part 580; elsewhere the law of the place',
    },
    { cannotBeUndone: true, gates: ['old-module-saved', 'supply-connected'] },
  ),
  step(
    {
      id: 'radio-code',
      stage: 'match',
      scope: 'module',
      fits: modulesOf(['radio']),
      title: 'Enter the unlock code of {module}',
      detail: 'One careful try; after a wrong one wait as the unit says. Leave it out if the unit does not ask.',
      routes: ['by-hand'],
      typicalMinutes: 10,
      reason: 'A radio that lost power, or comes from elsewhere, may stay locked until it has its code.',
    },
    { cautions: ['anti-theft-code'], gates: ['ownership-proven', 'code-in-hand'] },
  ),
];
