// Faults and what was decided for each.
import { type FaultDraft, faultDraftSchema } from '../../../../app/domain/diagnosis/fault.ts';
import type { Day } from '../../../../app/domain/shared/day.ts';
import { sayDay } from '../../../text/say-day.ts';
import { areaNames, faultText, sectionNames } from '../../../text/vehicle-entries.ts';
import { freshFault } from '../fresh-facts.ts';
import { showMinutes } from '../labour/minutes-text.ts';
import type { FactKind } from '../ledger/fact-kind.ts';
import { Ledger } from '../ledger/ledger.tsx';
import type { QuickAction } from '../ledger/ledger-row.tsx';
import { mayDecide } from '../may-change.ts';
import { canBeDone, withDecision } from '../next-facts.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { type FaultValue, faultValue, finishFault } from './fault-draft.ts';
import { FaultForm } from './fault-form.tsx';

const faultKind: FactKind<FaultDraft, FaultValue> = {
  list: 'faults',
  schema: faultDraftSchema,
  toChange: (item) => ({ kind: 'put', list: 'faults', item }),
  toValue: faultValue,
  finish: finishFault,
};

function isSettled(fault: FaultDraft): boolean {
  return fault.doneOn !== null || fault.decision?.kind === 'leave';
}

function decisionOf(fault: FaultDraft, today: Day): string {
  if (fault.decision === null) return faultText.undecided;
  const { kind, reason, estimateMinutes } = fault.decision;
  const words = [
    faultText.decisions[kind],
    reason,
    estimateMinutes === null || fault.doneOn !== null ? '' : `${showMinutes(estimateMinutes)} h`,
    fault.doneOn === null ? '' : faultText.finished(sayDay(fault.doneOn, today)),
  ];
  return words.filter((word) => word !== '').join(', ');
}

function quickActions(fault: FaultDraft, today: Day, decides: boolean): readonly QuickAction<FaultDraft>[] {
  if (canBeDone(fault)) return [{ label: faultText.quick.done, apply: (fact) => ({ ...fact, doneOn: today }) }];
  if (fault.decision !== null || !decides) return [];
  return [
    {
      label: faultText.quick.repair,
      apply: (fact) => withDecision(fact, 'repair', today),
      thenFocus: 'decision.estimateMinutes',
    },
    {
      label: faultText.quick.replace,
      apply: (fact) => withDecision(fact, 'replace', today),
      thenFocus: 'decision.estimateMinutes',
    },
    // Without a reason it is refused, which opens the row with the sentence at the reason.
    { label: faultText.quick.leave, apply: (fact) => withDecision(fact, 'leave', today) },
  ];
}

export function FaultsSection() {
  const { vehicle, today, role } = useVehicle();
  const faults = vehicle.faults.toSorted((a, b) => Number(isSettled(a)) - Number(isSettled(b)));
  return (
    <Ledger
      section="faults"
      title={sectionNames.faults}
      kind={faultKind}
      facts={faults}
      nameOf={(fault) => fault.what}
      addLabel={faultText.add}
      emptySentence={faultText.empty}
      makeNew={(id) => freshFault(id, today)}
      isDone={isSettled}
      columns={[
        { title: faultText.what, cell: (fault) => fault.what },
        {
          title: faultText.area,
          cell: (fault) => (fault.module === '' ? areaNames[fault.area] : fault.module),
        },
        { title: faultText.codes, cell: (fault) => <span className="code">{fault.codes.join(' ')}</span> },
        { title: faultText.foundOn, cell: (fault) => sayDay(fault.foundOn, today), isTight: true },
        { title: faultText.decision, cell: (fault) => decisionOf(fault, today) },
        {
          title: faultText.tellBuyer,
          isTitleUnseen: true,
          cell: (fault) => (fault.tellBuyer ? <span className="ledger-mark">{faultText.tellBuyerMark}</span> : null),
          isTight: true,
        },
      ]}
      quickActions={(fault) => quickActions(fault, today, mayDecide(role))}
      form={(edit) => <FaultForm edit={edit} />}
    />
  );
}
