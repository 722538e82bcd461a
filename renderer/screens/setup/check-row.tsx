// One check of the shop's checklist as a line of fields.
import type { KeyboardEvent } from 'react';
import { type Check, roleSchema } from '../../../app/domain/fleet/shop.ts';
import { workTouchSchema } from '../../../app/domain/work/work-area.ts';
import { roleNames } from '../../text/common.ts';
import { setupText } from '../../text/setup.ts';
import { Button } from '../../ui/button.tsx';
import { CheckField } from '../../ui/check-field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { RemoveCell } from './remove-cell.tsx';

type CheckRowProps = {
  readonly check: Check;
  readonly index: number;
  readonly count: number;
  readonly isReadOnly: boolean;
  readonly problemAt: (field: keyof Check) => string | undefined;
  readonly onChange: (check: Check, field: keyof Check) => void;
  readonly onMove: (to: number) => void;
  readonly onRemove: () => void;
  readonly onKeyDown: (event: KeyboardEvent) => void;
};

export function CheckRow(props: CheckRowProps) {
  const { check, index, count, isReadOnly, problemAt, onChange, onMove, onRemove, onKeyDown } = props;
  const title = check.title.trim() || setupText.unnamed(index + 1);
  const at = (field: keyof Check) => ({ problem: problemAt(field), isReadOnly, isLabelUnseen: true });
  return (
    <tr className={check.isActive ? undefined : 'is-inactive'} onKeyDown={onKeyDown}>
      <td className="setup-order">
        <Button
          kind="quiet"
          label={setupText.moveUp(title)}
          isDisabled={isReadOnly || index === 0}
          onPress={() => onMove(index - 1)}
        >
          ↑
        </Button>
        <Button
          kind="quiet"
          label={setupText.moveDown(title)}
          isDisabled={isReadOnly || index === count - 1}
          onPress={() => onMove(index + 1)}
        >
          ↓
        </Button>
      </td>
      <td className="setup-check-title">
        <TextField
          label={setupText.titleOf(index + 1)}
          value={check.title}
          onChange={(value) => onChange({ ...check, title: value }, 'title')}
          {...at('title')}
        />
      </td>
      <td>
        <SelectField
          label={setupText.stageOf(title)}
          value={check.stage}
          options={(['verify', 'present'] as const).map((value) => ({ value, label: setupText.stages[value] }))}
          onChange={(stage) => onChange({ ...check, stage }, 'stage')}
          {...at('stage')}
        />
      </td>
      <td>
        <SelectField
          label={setupText.whoOf(title)}
          value={check.who}
          options={roleSchema.options.map((value) => ({ value, label: roleNames[value] }))}
          onChange={(who) => onChange({ ...check, who }, 'who')}
          {...at('who')}
        />
      </td>
      <td>
        <div className="setup-touches">
          {workTouchSchema.options.map((touch) => (
            <label key={touch} title={setupText.touchOf(setupText.touches[touch], title)}>
              <input
                type="checkbox"
                checked={check.staleAfter.includes(touch)}
                aria-disabled={isReadOnly || undefined}
                onChange={(event) => {
                  if (isReadOnly) return;
                  const wanted = event.currentTarget.checked;
                  const staleAfter = workTouchSchema.options.filter((other) =>
                    other === touch ? wanted : check.staleAfter.includes(other),
                  );
                  onChange({ ...check, staleAfter }, 'staleAfter');
                }}
              />
              {setupText.touches[touch]}
              <span className="unseen">{`: ${title}`}</span>
            </label>
          ))}
        </div>
      </td>
      <td>
        <CheckField
          label={setupText.activeOf(title)}
          value={check.isActive}
          onChange={(isActive) => onChange({ ...check, isActive }, 'isActive')}
          {...at('isActive')}
        />
      </td>
      <RemoveCell
        isReadOnly={isReadOnly}
        label={setupText.removeOf(title)}
        word={setupText.remove}
        onRemove={onRemove}
      />
    </tr>
  );
}
