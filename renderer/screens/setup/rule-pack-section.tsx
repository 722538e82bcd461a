// The rules by which programming jobs are planned: steps and order rules with reason and source, edited as the shop's own copy.
import './rule-pack.css';
import { type ReactNode, useState } from 'react';
import { generalPack } from '../../../app/domain/programming/general-pack.ts';
import type { OrderRule, RulePack, StepTemplate } from '../../../app/domain/programming/rule-pack.ts';
import type { Day } from '../../../app/domain/shared/day.ts';
import { typeIntoShop } from '../../state/shop-store.ts';
import { stageWords } from '../../text/programming.ts';
import { sayDay } from '../../text/say-day.ts';
import { setupRulesText as text } from '../../text/setup-rules.ts';
import { Button } from '../../ui/button.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { OrderRuleFields } from './order-rule-fields.tsx';
import { PackTextDialog } from './pack-text-dialog.tsx';
import { matches, newRule, newStep, withoutStep, withStep } from './rule-pack-draft.ts';
import { SectionForm, type SectionProps } from './section-form.tsx';
import { StepTemplateFields } from './step-template-fields.tsx';

type EntryProps = {
  readonly name: string;
  readonly aside: string;
  readonly isOpen: boolean;
  readonly hasProblem: boolean;
  readonly isReadOnly: boolean;
  readonly onToggle: () => void;
  readonly onRemove: () => void;
  readonly children: () => ReactNode;
};

/** A line that opens to its fields; with a problem in it, it is open. The fields are drawn only then: there are many lines. */
function Entry({ name, aside, isOpen, hasProblem, isReadOnly, onToggle, onRemove, children }: EntryProps) {
  const isShown = isOpen || hasProblem;
  return (
    <li className="rule-entry">
      <button type="button" className="rule-line" aria-expanded={isShown} onClick={onToggle}>
        <span>{name}</span> <span className="quiet">{aside}</span>
      </button>
      {isShown && (
        <div className="rule-fields">
          {children()}
          {!isReadOnly && (
            <Button kind="quiet" label={text.removeOf(name)} onPress={onRemove}>
              {text.remove}
            </Button>
          )}
        </div>
      )}
    </li>
  );
}

export function RulePackSection({
  kept,
  today,
  ...section
}: SectionProps & { readonly kept: readonly RulePack[]; readonly today: Day }) {
  const { state, readOnlyReason } = section;
  const [search, setSearch] = useState('');
  const [open, setOpen] = useState<ReadonlySet<string>>(new Set());
  const [showsText, setShowsText] = useState(false);
  const isReadOnly = readOnlyReason !== null;
  const drafted = state.drafts.rulePacks ?? kept;
  const own = drafted[0];
  const pack = own ?? generalPack;
  const problems = state.problems.rulePacks ?? [];
  const set = (next: RulePack, field: string) => typeIntoShop('rulePacks', [next], field === '' ? '' : `0.${field}`);
  const toggle = (key: string) =>
    setOpen((keys) => new Set(keys.has(key) ? [...keys].filter((one) => one !== key) : [...keys, key]));
  const problemsOf = (place: string) => (field: string) =>
    problems.find((one) => one.field === `0.${place}.${field}` || one.field.startsWith(`0.${place}.${field}.`))
      ?.sentence;
  const hasProblem = (place: string) => problems.some(({ field }) => field.startsWith(`0.${place}.`));
  const loose = problems.filter(({ field }) => field !== '' && !/^0\.(steps|rules)\.\d/.test(field));
  const setStep = (index: number, step: StepTemplate, field: string) =>
    set(withStep(pack, index, step), `steps.${index}.${field}`);
  const setRule = (index: number, rule: OrderRule, field: string) =>
    set({ ...pack, rules: pack.rules.with(index, rule) }, `rules.${index}.${field}`);
  const remove = (next: RulePack) => {
    // The lines behind it move up: which of them was open is no longer told by their place.
    setOpen(new Set());
    set(next, '');
  };
  const isDrafted = state.drafts.rulePacks !== null;
  const standing =
    own === undefined ? text.shipped(pack.version) : text.own(pack.version, sayDay(pack.changedOn, today));
  // What is being edited stays in sight, also when its new words no longer fit the search.
  const isShownAnyway = (key: string) => open.has(key) || hasProblem(key);
  const steps = pack.steps
    .map((step, index) => ({ step, index }))
    .filter(
      ({ step, index }) =>
        isShownAnyway(`steps.${index}`) ||
        matches(search, [step.id, step.title, step.detail, step.reason, step.source]),
    );
  const rules = pack.rules
    .map((rule, index) => ({ rule, index }))
    .filter(
      ({ rule, index }) =>
        isShownAnyway(`rules.${index}`) ||
        matches(search, [rule.id, rule.reason, rule.source, ...rule.before.steps, ...rule.after.steps]),
    );
  return (
    <SectionForm
      {...section}
      part="rulePacks"
      hint={text.hint}
      extraAction={
        <>
          {!isReadOnly && own !== undefined && (
            <Button kind="quiet" onPress={() => typeIntoShop('rulePacks', [], '')}>
              {text.backToShipped}
            </Button>
          )}
          <Button kind="quiet" onPress={() => setShowsText(true)}>
            {text.asText}
          </Button>
        </>
      }
    >
      <p className="quiet">{isDrafted && own !== undefined ? text.ownUnsaved : standing}</p>
      {loose.map(({ field, sentence }) => (
        <p key={field} className="field-problem" role="alert">
          {sentence}
        </p>
      ))}
      <div className="field-grid rule-search">
        <TextField label={text.search} value={search} onChange={setSearch} hint={text.searchHint} />
      </div>
      <div className="rule-columns">
        <div>
          <h3>
            {text.steps} <span className="section-count">{pack.steps.length}</span>
          </h3>
          <ul>
            {steps.map(({ step, index }) => (
              <Entry
                key={`steps.${index}`}
                name={step.title}
                aside={`${stageWords[step.stage]} · ${step.id}`}
                isOpen={open.has(`steps.${index}`)}
                hasProblem={hasProblem(`steps.${index}`)}
                isReadOnly={isReadOnly}
                onToggle={() => toggle(`steps.${index}`)}
                onRemove={() => remove(withoutStep(pack, step.id))}
              >
                {() => (
                  <StepTemplateFields
                    step={step}
                    isReadOnly={isReadOnly}
                    problemAt={problemsOf(`steps.${index}`)}
                    onChange={(changed, field) => setStep(index, changed, field)}
                  />
                )}
              </Entry>
            ))}
          </ul>
          {steps.length === 0 && <p className="quiet">{text.nothingFound}</p>}
          {!isReadOnly && (
            <Button
              onPress={() => {
                set({ ...pack, steps: [...pack.steps, newStep(pack)] }, '');
                toggle(`steps.${pack.steps.length}`);
              }}
            >
              {text.addStep}
            </Button>
          )}
        </div>
        <div>
          <h3>
            {text.rules} <span className="section-count">{pack.rules.length}</span>
          </h3>
          <ul>
            {rules.map(({ rule, index }) => (
              <Entry
                key={`rules.${index}`}
                name={rule.id}
                aside={rule.reason}
                isOpen={open.has(`rules.${index}`)}
                hasProblem={hasProblem(`rules.${index}`)}
                isReadOnly={isReadOnly}
                onToggle={() => toggle(`rules.${index}`)}
                onRemove={() => remove({ ...pack, rules: pack.rules.filter((_, at) => at !== index) })}
              >
                {() => (
                  <OrderRuleFields
                    rule={rule}
                    pack={pack}
                    isReadOnly={isReadOnly}
                    problemAt={problemsOf(`rules.${index}`)}
                    onChange={(changed, field) => setRule(index, changed, field)}
                  />
                )}
              </Entry>
            ))}
          </ul>
          {rules.length === 0 && <p className="quiet">{text.nothingFound}</p>}
          {!isReadOnly && (
            <Button
              onPress={() => {
                set({ ...pack, rules: [...pack.rules, newRule(pack)] }, '');
                toggle(`rules.${pack.rules.length}`);
              }}
            >
              {text.addRule}
            </Button>
          )}
          <p className="quiet rule-reminders">{text.remindersHint(pack.reminders.length)}</p>
        </div>
      </div>
      {showsText && (
        <PackTextDialog
          pack={pack}
          isReadOnly={isReadOnly}
          onTake={(taken) => set(taken, '')}
          onClose={() => setShowsText(false)}
        />
      )}
    </SectionForm>
  );
}
