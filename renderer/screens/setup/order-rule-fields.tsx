// One order rule of the pack as fields: which steps come before which, among which modules, why, and after whom.
import type { OrderRule, RulePack } from '../../../app/domain/programming/rule-pack.ts';
import { setupRulesText as text } from '../../text/setup-rules.ts';
import { Button } from '../../ui/button.tsx';
import { CheckField } from '../../ui/check-field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { sayFits } from './rule-pack-draft.ts';

export type OrderRuleFieldsProps = {
  readonly rule: OrderRule;
  readonly pack: RulePack;
  readonly isReadOnly: boolean;
  readonly problemAt: (field: string) => string | undefined;
  readonly onChange: (rule: OrderRule, field: keyof OrderRule) => void;
};

type SideProps = OrderRuleFieldsProps & { readonly side: 'before' | 'after' };

function Side({ rule, pack, isReadOnly, problemAt, onChange, side }: SideProps) {
  const choice = rule[side];
  const set = (steps: readonly string[]) => onChange({ ...rule, [side]: { ...choice, steps: [...steps] } }, side);
  const left = pack.steps.filter(({ id }) => !choice.steps.includes(id));
  return (
    <div className="rule-side">
      <div className="field-label">{text[side]}</div>
      <ul>
        {choice.steps.map((id) => (
          <li key={id}>
            <span title={pack.steps.find((step) => step.id === id)?.title}>{id}</span>
            {!isReadOnly && (
              <Button
                kind="quiet"
                label={text.takeOut(id, text[side])}
                onPress={() => set(choice.steps.filter((other) => other !== id))}
              >
                ×
              </Button>
            )}
          </li>
        ))}
      </ul>
      {!isReadOnly && (
        <SelectField
          label={side === 'before' ? text.addBefore : text.addAfter}
          isLabelUnseen
          value=""
          onChange={(id) => {
            if (id !== '') set([...choice.steps, id]);
          }}
          problem={problemAt(side)}
          options={[{ value: '', label: text.chooseStep }, ...left.map(({ id }) => ({ value: id, label: id }))]}
        />
      )}
      {(choice.fits.kinds !== 'any' || choice.fits.origins !== 'any') && (
        <p className="quiet">{sayFits(choice.fits)}</p>
      )}
    </div>
  );
}

export function OrderRuleFields(props: OrderRuleFieldsProps) {
  const { rule, isReadOnly, problemAt, onChange } = props;
  const at = <Field extends keyof OrderRule>(field: Field) => ({
    value: rule[field],
    onChange: (value: OrderRule[Field]) => onChange({ ...rule, [field]: value }, field),
    problem: problemAt(field),
    isReadOnly,
  });
  return (
    <>
      <div className="rule-sides">
        <Side {...props} side="before" />
        <Side {...props} side="after" />
      </div>
      <div className="field-grid">
        <TextField label={text.id} {...at('id')} isRequired code />
        <SelectField
          label={text.among}
          {...at('modules')}
          options={(['same', 'any'] as const).map((value) => ({ value, label: text.amongs[value] }))}
        />
        <CheckField
          label={text.letsGo}
          value={rule.letsGoWhen !== null}
          onChange={(isOn) => onChange({ ...rule, letsGoWhen: isOn ? 'in-vehicle-routes-failed' : null }, 'letsGoWhen')}
          isReadOnly={isReadOnly}
        />
        <TextField label={text.reason} {...at('reason')} isRequired isWide />
        <TextField label={text.source} {...at('source')} isRequired isWide />
      </div>
      {rule.when !== null && <p className="quiet">{text.withCondition}</p>}
    </>
  );
}
