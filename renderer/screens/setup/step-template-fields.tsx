// One step of the rule pack as fields: its texts, minutes, cautions, what it asks for and by which routes it is done.
import { gateKindSchema, gates } from '../../../app/domain/programming/gate-kind.ts';
import { programmingRouteSchema } from '../../../app/domain/programming/programming-route.ts';
import { type StepTemplate, stageSchema } from '../../../app/domain/programming/rule-pack.ts';
import { type CautionKey, cautionKeySchema, cautions } from '../../../app/domain/work/cautions.ts';
import { routeWords, stageWords } from '../../text/programming.ts';
import { gateNames, setupRulesText as text } from '../../text/setup-rules.ts';
import { CheckField } from '../../ui/check-field.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { CheckGroup } from './check-group.tsx';
import { sayFits } from './rule-pack-draft.ts';

const cautionNames = Object.fromEntries(cautionKeySchema.options.map((key) => [key, cautions[key].title])) as Readonly<
  Record<CautionKey, string>
>;

export type StepTemplateFieldsProps = {
  readonly step: StepTemplate;
  readonly isReadOnly: boolean;
  readonly problemAt: (field: string) => string | undefined;
  readonly onChange: (step: StepTemplate, field: keyof StepTemplate) => void;
};

export function StepTemplateFields({ step, isReadOnly, problemAt, onChange }: StepTemplateFieldsProps) {
  const at = <Field extends keyof StepTemplate>(field: Field) => ({
    value: step[field],
    onChange: (value: StepTemplate[Field]) => onChange({ ...step, [field]: value }, field),
    problem: problemAt(field),
    isReadOnly,
  });
  // A step of the whole job cannot ask for something module by module.
  const askable = gateKindSchema.options.filter((gate) => step.scope === 'module' || gates[gate].scope === 'job');
  return (
    <>
      <div className="field-grid">
        <TextField label={text.title} {...at('title')} hint={text.titleHint} isRequired isWide />
        <TextField label={text.detail} {...at('detail')} isWide />
        <SelectField
          label={text.stage}
          {...at('stage')}
          options={stageSchema.options.map((value) => ({ value, label: stageWords[value] }))}
        />
        <NumberField label={text.minutes} {...at('typicalMinutes')} maximum={6000} unit={text.minutesUnit} />
        <TextField label={text.id} {...at('id')} hint={text.idHint} isRequired code />
        <CheckField label={text.cannotBeUndone} {...at('cannotBeUndone')} />
        <TextField label={text.reason} {...at('reason')} isRequired isWide />
        <TextField label={text.source} {...at('source')} isRequired isWide />
      </div>
      <CheckGroup
        label={text.gates}
        all={askable}
        names={gateNames}
        chosen={step.gates}
        isReadOnly={isReadOnly}
        problem={problemAt('gates')}
        onChange={at('gates').onChange}
      />
      <CheckGroup
        label={text.cautions}
        all={cautionKeySchema.options}
        names={cautionNames}
        chosen={step.cautions}
        isReadOnly={isReadOnly}
        problem={problemAt('cautions')}
        onChange={at('cautions').onChange}
      />
      <CheckGroup
        label={text.routes}
        all={programmingRouteSchema.options}
        names={routeWords}
        chosen={step.routes}
        isReadOnly={isReadOnly}
        problem={problemAt('routes')}
        onChange={at('routes').onChange}
      />
      <p className="quiet">
        {[
          text.scopes[step.scope],
          sayFits(step.fits),
          step.when === null ? '' : text.withCondition,
          step.meets.length > 0 ? `${text.meets}: ${step.meets.map((gate) => gateNames[gate]).join(', ')}.` : '',
        ]
          .filter((part) => part !== '')
          .join(' ')}
      </p>
    </>
  );
}
