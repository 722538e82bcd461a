// The shop's kinds of codes, one under the other, each closed to a line until it is opened.
import './codes.css';
import { useId, useState } from 'react';
import type { CodeKindFacts } from '../../../app/domain/codes/code-kinds.ts';
import { newIdentifier } from '../../state/new-identifier.ts';
import { typeIntoShop } from '../../state/shop-store.ts';
import { setupCodesText as text } from '../../text/setup-codes.ts';
import { Button } from '../../ui/button.tsx';
import { CodeKindFields, type TypedKind } from './code-kind-fields.tsx';
import { SectionForm, type SectionProps } from './section-form.tsx';

function freshKind(): TypedKind {
  return {
    id: newIdentifier(),
    name: '',
    needs: ['vin'],
    codeForm: null,
    serialForms: [],
    triesAllowed: null,
    lockOutMinutes: null,
    advice: '',
    source: '',
    isActive: true,
  };
}

type RowProps = Parameters<typeof CodeKindFields>[0] & {
  readonly isNew: boolean;
  readonly hasProblem: boolean;
  readonly onRemove: () => void;
};

function Kind({ isNew, hasProblem, onRemove, ...fields }: RowProps) {
  const { kind, isReadOnly } = fields;
  const titleId = useId();
  const name = kind.name || text.newKind;
  return (
    <details className="setup-scheme" open={isNew || hasProblem || undefined} aria-labelledby={titleId}>
      <summary id={titleId}>
        <b>{name}</b>{' '}
        <span className="quiet">
          {text.sayKind(kind)}
          {kind.isActive ? '' : `; ${text.off}`}
        </span>
      </summary>
      <CodeKindFields {...fields} />
      {!isReadOnly && (
        <Button kind="quiet" label={text.removeKind(name)} onPress={onRemove}>
          {text.remove}
        </Button>
      )}
    </details>
  );
}

export function CodeKindsSection({ kept, ...section }: SectionProps & { readonly kept: readonly CodeKindFacts[] }) {
  const { state, readOnlyReason } = section;
  const [newIds, setNewIds] = useState<readonly string[]>([]);
  const kinds: readonly TypedKind[] = state.drafts.codeKinds ?? kept;
  const isReadOnly = readOnlyReason !== null;
  const add = () => {
    const kind = freshKind();
    setNewIds([...newIds, kind.id]);
    typeIntoShop('codeKinds', [...kinds, kind], '');
  };
  return (
    <SectionForm
      {...section}
      part="codeKinds"
      count={kinds.length}
      hint={text.kindsHint}
      extraAction={
        !isReadOnly && (
          <Button kind="quiet" onPress={add}>
            {text.addKind}
          </Button>
        )
      }
    >
      {kinds.map((kind, index) => (
        <Kind
          key={kind.id}
          kind={kind}
          isNew={newIds.includes(kind.id)}
          isReadOnly={isReadOnly}
          problemAt={(field) =>
            state.problems.codeKinds?.find(
              (problem) => problem.field === `${index}.${field}` || problem.field.startsWith(`${index}.${field}.`),
            )?.sentence
          }
          hasProblem={state.problems.codeKinds?.some(({ field }) => field.startsWith(`${index}.`)) ?? false}
          onChange={(changed, field) =>
            typeIntoShop(
              'codeKinds',
              kinds.map((one, at) => (at === index ? changed : one)),
              `${index}.${field}`,
            )
          }
          onRemove={() =>
            typeIntoShop(
              'codeKinds',
              kinds.filter((_, at) => at !== index),
              '',
            )
          }
        />
      ))}
    </SectionForm>
  );
}
