// The checks the shop signs for, in their order: what, at which stage, by whom, and after which later work again.
import { type KeyboardEvent, useState } from 'react';
import { type Check, roleSchema } from '../../../app/domain/fleet/shop.ts';
import { newIdentifier } from '../../state/new-identifier.ts';
import { withMoved } from '../../state/shop-parts.ts';
import { typeIntoShop } from '../../state/shop-store.ts';
import { setupText } from '../../text/setup.ts';
import { Button } from '../../ui/button.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { LiveRegion } from '../../ui/live-region.tsx';
import { CheckRow } from './check-row.tsx';
import { focusLastField } from './focus-last-field.ts';
import { problemAt, SectionForm, type SectionProps } from './section-form.tsx';

function newCheck(): Check {
  return {
    id: newIdentifier(),
    title: '',
    stage: 'verify',
    who: roleSchema.enum.technician,
    staleAfter: [],
    isActive: true,
  };
}

export function ChecklistSection({ kept, ...section }: SectionProps & { readonly kept: readonly Check[] }) {
  const { state } = section;
  const checks = state.drafts.checklist ?? kept;
  const isReadOnly = section.readOnlyReason !== null;
  const [said, setSaid] = useState('');
  const set = (next: readonly Check[], field: string) => typeIntoShop('checklist', next, field);
  const move = (index: number, to: number) => {
    const check = checks[index];
    const moved = withMoved(checks, index, to);
    if (check === undefined || moved === checks) return;
    const focused = document.activeElement;
    set(moved, '');
    setSaid(setupText.moved(check.title, to + 1, checks.length));
    // The browser drops the focus of a row that is put elsewhere.
    requestAnimationFrame(() => {
      if (focused instanceof HTMLElement && focused.isConnected) focused.focus();
    });
  };
  const onKeyDown = (event: KeyboardEvent, index: number) => {
    if (!event.altKey || isReadOnly || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return;
    event.preventDefault();
    move(index, event.key === 'ArrowUp' ? index - 1 : index + 1);
  };
  return (
    <SectionForm
      {...section}
      part="checklist"
      count={checks.length}
      hint={setupText.checklistHint}
      extraAction={
        !isReadOnly && (
          <Button
            kind="quiet"
            onPress={() => {
              set([...checks, newCheck()], '');
              focusLastField('checklist');
            }}
          >
            {setupText.addCheck}
          </Button>
        )
      }
    >
      <LiveRegion text={said} />
      {checks.length === 0 ? (
        <EmptyState sentence={setupText.noChecks} />
      ) : (
        <table className="setup-table">
          <thead>
            <tr>
              <th scope="col">{setupText.order}</th>
              <th scope="col">{setupText.checkTitle}</th>
              <th scope="col">{setupText.stage}</th>
              <th scope="col">{setupText.who}</th>
              <th scope="col">{setupText.staleAfter}</th>
              <th scope="col">{setupText.active}</th>
              <td />
            </tr>
          </thead>
          <tbody>
            {checks.map((check, index) => (
              <CheckRow
                key={check.id}
                check={check}
                index={index}
                count={checks.length}
                isReadOnly={isReadOnly}
                problemAt={(field) => problemAt(state, 'checklist', `${index}.${field}`)}
                onChange={(changed, field) =>
                  set(
                    checks.map((other) => (other.id === check.id ? changed : other)),
                    `${index}.${field}`,
                  )
                }
                onMove={(to) => move(index, to)}
                onRemove={() =>
                  set(
                    checks.filter((other) => other.id !== check.id),
                    '',
                  )
                }
                onKeyDown={(event) => onKeyDown(event, index)}
              />
            ))}
          </tbody>
        </table>
      )}
    </SectionForm>
  );
}
