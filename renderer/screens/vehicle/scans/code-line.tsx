// One code in the reading of scans: the code, its words and what its number tells, the fault it belongs to or the way to make it one, and
// what the shop knows of it from earlier vehicles.
import { type ReactNode, useState } from 'react';
import type { Day } from '../../../../app/domain/shared/day.ts';
import { newIdentifier } from '../../../state/new-identifier.ts';
import { seedDraft } from '../../../state/use-edit-draft.ts';
import { comparisonText } from '../../../text/scans.ts';
import { Button } from '../../../ui/button.tsx';
import { draftKey } from '../ledger/fact-form.tsx';
import { openEntry } from '../ledger/open-entries.ts';
import { Notebook } from '../notebook/notebook.tsx';
import { goToSection } from '../page/jump.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { CodeDetail } from './code-detail.tsx';
import { faultFromCode, faultWithCode, type NewFault } from './new-fault.ts';

/** Opens the form of a new fault with what is known typed in; or the fault that is there already. */
export function FaultButton({
  found,
  draft,
  foundOn,
}: {
  readonly found: { readonly id: string; readonly what: string } | null;
  readonly draft: NewFault;
  /** The day of the scan that shows it. */
  readonly foundOn: Day;
}) {
  const state = useVehicle();
  const place = `${state.id}/faults`;
  if (found !== null)
    return (
      <Button
        kind="quiet"
        label={comparisonText.isFaultOf(found.what)}
        tip={found.what}
        onPress={() => {
          if (state.canPut('faults')) openEntry(place, found.id);
          goToSection('faults', `[data-fact="${CSS.escape(found.id)}"]`);
        }}
      >
        {comparisonText.isFault}
      </Button>
    );
  if (!state.canPut('faults')) return null;
  return (
    <Button
      kind="quiet"
      label={comparisonText.makeFaultOf(draft.what)}
      onPress={() => {
        const id = newIdentifier();
        seedDraft(draftKey(state.id, 'faults', id), { ...draft, foundOn, codes: draft.codes.join(' ') });
        openEntry(place, id, { isNew: true });
        goToSection('faults');
      }}
    >
      {comparisonText.makeFault}
    </Button>
  );
}

type CodeLineProps = {
  readonly code: string;
  readonly module: string;
  readonly words: string;
  readonly statusByte: number | null;
  readonly first: ReactNode;
  readonly sentence: ReactNode;
  readonly maySeeCases: boolean;
  readonly foundOn: Day;
};

export function CodeLine({ code, module, words, statusByte, first, sentence, maySeeCases, foundOn }: CodeLineProps) {
  const { vehicle, id } = useVehicle();
  const [isOpen, setIsOpen] = useState(false);
  return (
    <>
      <tr>
        <td>{first}</td>
        <td className="code reading-code">{code}</td>
        <td>{module}</td>
        <td>
          {words !== '' && <span>{words} </span>}
          <CodeDetail code={code} statusByte={statusByte} />
        </td>
        <td className="reading-how">{sentence}</td>
        <td className="reading-actions">
          {maySeeCases && (
            <Button
              kind="quiet"
              label={comparisonText.lastTimeOf(code)}
              isPressed={isOpen}
              onPress={() => setIsOpen(!isOpen)}
            >
              {comparisonText.lastTime}
            </Button>
          )}
          <FaultButton
            found={faultWithCode(vehicle, code)}
            draft={faultFromCode(code, module, words)}
            foundOn={foundOn}
          />
        </td>
      </tr>
      {isOpen && (
        <tr className="reading-notebook">
          <td colSpan={6}>
            <Notebook module={module} codes={[code]} vehicleId={id} />
          </td>
        </tr>
      )}
    </>
  );
}
