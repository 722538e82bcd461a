// One kind of code in Setup: what a request must carry, how codes and serials usually look, tries and lock, with its source.
import { useState } from 'react';
import { type CodeKindFacts, requestNeedSchema, type SerialForm } from '../../../app/domain/codes/code-kinds.ts';
import type { Blankable } from '../../state/shop-parts.ts';
import { setupCodesText as text } from '../../text/setup-codes.ts';
import { Button } from '../../ui/button.tsx';
import { CheckField } from '../../ui/check-field.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { TextField } from '../../ui/text-field.tsx';

export type TypedKind = Blankable<CodeKindFacts>;

type KindProps = {
  readonly kind: TypedKind;
  readonly isReadOnly: boolean;
  readonly problemAt: (field: string) => string | undefined;
  readonly onChange: (kind: TypedKind, field: string) => void;
};

const characterChoices = (['digits', 'letters-and-digits'] as const).map((value) => ({
  value,
  label: text.characters[value],
}));

/** Numbers out of '4' or '4, 5'; what is no number stays one that the schema refuses. */
function readLengths(typed: string): readonly (number | null)[] {
  const parts = typed.split(/[\s,;]+/).filter((part) => part !== '');
  return parts.map((part) => (/^\d{1,3}$/.test(part) ? Number(part) : null));
}

function LengthsField({ kind, isReadOnly, problemAt, onChange }: KindProps) {
  const [typed, setTyped] = useState(kind.codeForm?.lengths.join(', ') ?? '');
  const { codeForm } = kind;
  if (codeForm === null) return null;
  return (
    <TextField
      label={text.lengths}
      hint={text.lengthsHint}
      value={typed}
      onChange={(next) => {
        setTyped(next);
        onChange({ ...kind, codeForm: { ...codeForm, lengths: readLengths(next) } }, 'codeForm.lengths');
      }}
      problem={problemAt('codeForm')}
      isReadOnly={isReadOnly}
      isRequired
    />
  );
}

function SerialRows({ kind, isReadOnly, problemAt, onChange }: KindProps) {
  const { serialForms } = kind;
  const set = (index: number, more: Partial<Blankable<SerialForm>>, field: string) =>
    onChange(
      { ...kind, serialForms: serialForms.map((form, at) => (at === index ? { ...form, ...more } : form)) },
      `serialForms.${index}.${field}`,
    );
  const fresh = {
    fromModelYear: null,
    toModelYear: null,
    beginsWith: '',
    characters: 'letters-and-digits',
    length: null,
  };
  return (
    <fieldset className="field-group">
      <legend>{text.serials}</legend>
      {serialForms.map((form, index) => {
        const wiring = (label: string, field: string) => ({
          label,
          problem: problemAt(`serialForms.${index}.${field}`),
          isReadOnly,
        });
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a form is known by its place only.
          <fieldset className="setup-serial" key={index}>
            <legend className="unseen">{text.usualSerial(index + 1)}</legend>
            <div className="field-grid">
              <NumberField
                value={form.fromModelYear}
                onChange={(fromModelYear) => set(index, { fromModelYear }, 'fromModelYear')}
                minimum={1900}
                maximum={2199}
                {...wiring(text.fromYear, 'fromModelYear')}
              />
              <NumberField
                value={form.toModelYear}
                onChange={(toModelYear) => set(index, { toModelYear }, 'toModelYear')}
                minimum={1900}
                maximum={2199}
                {...wiring(text.toYear, 'toModelYear')}
              />
              <TextField
                value={form.beginsWith}
                onChange={(beginsWith) => set(index, { beginsWith: beginsWith.toUpperCase() }, 'beginsWith')}
                code
                {...wiring(text.beginsWith, 'beginsWith')}
              />
              <SelectField
                value={form.characters}
                onChange={(characters) => set(index, { characters }, 'characters')}
                options={characterChoices}
                {...wiring(text.consistsOf, 'characters')}
              />
              <NumberField
                value={form.length}
                onChange={(length) => set(index, { length }, 'length')}
                minimum={1}
                maximum={64}
                {...wiring(text.length, 'length')}
              />
              {!isReadOnly && (
                <Button
                  kind="quiet"
                  label={text.removeSerial(index + 1)}
                  onPress={() =>
                    onChange({ ...kind, serialForms: serialForms.filter((_, at) => at !== index) }, 'serialForms')
                  }
                >
                  {text.remove}
                </Button>
              )}
            </div>
          </fieldset>
        );
      })}
      {!isReadOnly && (
        <Button
          kind="quiet"
          onPress={() =>
            onChange({ ...kind, serialForms: [...serialForms, fresh as Blankable<SerialForm>] }, 'serialForms')
          }
        >
          {text.addSerial}
        </Button>
      )}
    </fieldset>
  );
}

export function CodeKindFields(props: KindProps) {
  const { kind, isReadOnly, problemAt, onChange } = props;
  const set = (more: Partial<TypedKind>, field: string) => onChange({ ...kind, ...more }, field);
  const at = (field: string) => ({ problem: problemAt(field), isReadOnly });
  return (
    <>
      <div className="field-grid">
        <TextField
          label={text.name}
          value={kind.name}
          onChange={(name) => set({ name }, 'name')}
          isRequired
          {...at('name')}
        />
        <SelectField
          label={text.codeForm}
          value={kind.codeForm?.characters ?? ''}
          onChange={(characters) =>
            set(
              {
                codeForm: characters === '' ? null : { characters, lengths: kind.codeForm?.lengths ?? [] },
              },
              'codeForm',
            )
          }
          options={[{ value: '', label: text.noForm }, ...characterChoices]}
          isReadOnly={isReadOnly}
        />
        <LengthsField {...props} />
        <NumberField
          label={text.triesAllowed}
          value={kind.triesAllowed}
          onChange={(triesAllowed) => set({ triesAllowed }, 'triesAllowed')}
          minimum={1}
          maximum={99}
          hint={text.unknownHint}
          {...at('triesAllowed')}
        />
        <NumberField
          label={text.lockOutMinutes}
          value={kind.lockOutMinutes}
          onChange={(lockOutMinutes) => set({ lockOutMinutes }, 'lockOutMinutes')}
          minimum={1}
          maximum={100_000}
          hint={text.unknownHint}
          {...at('lockOutMinutes')}
        />
        <TextField
          label={text.advice}
          value={kind.advice}
          onChange={(advice) => set({ advice }, 'advice')}
          isWide
          {...at('advice')}
        />
        <TextField
          label={text.source}
          value={kind.source}
          onChange={(source) => set({ source }, 'source')}
          isRequired
          isWide
          {...at('source')}
        />
      </div>
      <fieldset className="field-group">
        <legend>{text.needs}</legend>
        <div className="setup-needs">
          {requestNeedSchema.options.map((need) => (
            <CheckField
              key={need}
              label={text.needNames[need]}
              value={kind.needs.includes(need)}
              onChange={(isNeeded) =>
                set(
                  {
                    needs: requestNeedSchema.options.filter((one) =>
                      one === need ? isNeeded : kind.needs.includes(one),
                    ),
                  },
                  'needs',
                )
              }
              isReadOnly={isReadOnly}
            />
          ))}
        </div>
      </fieldset>
      <SerialRows {...props} />
      <CheckField
        label={text.active}
        value={kind.isActive}
        onChange={(isActive) => set({ isActive }, 'isActive')}
        isReadOnly={isReadOnly}
      />
    </>
  );
}
