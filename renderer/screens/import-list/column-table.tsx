// What each column means and how it writes numbers and days: guessed, shown, and changed by the person.
import { type ListFact, listFacts } from '../../../app/domain/import/list-columns.ts';
import { dayFormNames, decimalFormNames, factNames, importListText as text } from '../../text/import-list.ts';
import { SelectField } from '../../ui/select-field.tsx';
import { changeReading, type OpenList } from './list-store.ts';

const dayFacts: readonly ListFact[] = ['boughtOn', 'arrivedOn', 'expectedOn'];
const numberFacts: readonly ListFact[] = ['price', 'fees', 'transport', 'asking', 'odometer'];
const notUsed = 'none';

function optionsOf<Value extends string>(names: Readonly<Record<Value, string>>) {
  return Object.entries<string>(names).map(([value, label]) => ({ value: value as Value, label }));
}

function withOne<Value>(all: readonly Value[], at: number, value: Value): Value[] {
  return all.map((one, index) => (index === at ? value : one));
}

function Form({ list, column, header }: { list: OpenList; column: number; header: string }) {
  const { match, decimalForms, dayForms } = list.reading;
  const fact = match[column] ?? null;
  const shared = { label: text.writtenIn(header), isLabelUnseen: true } as const;
  if (fact !== null && dayFacts.includes(fact))
    return (
      <SelectField
        {...shared}
        value={dayForms[column] ?? 'year-first'}
        options={optionsOf(dayFormNames)}
        onChange={(form) => changeReading({ dayForms: withOne(dayForms, column, form) })}
      />
    );
  if (fact !== null && numberFacts.includes(fact))
    return (
      <SelectField
        {...shared}
        value={decimalForms[column] ?? 'point'}
        options={optionsOf(decimalFormNames)}
        onChange={(form) => changeReading({ decimalForms: withOne(decimalForms, column, form) })}
      />
    );
  return null;
}

export function ColumnTable({ list }: { readonly list: OpenList }) {
  const { headers, examples } = list.look;
  const { match } = list.reading;
  const choose = (column: number, fact: ListFact | null) => {
    // A fact comes from one column: the one it was at before gives it up.
    const freed = match.map((one) => (one === fact ? null : one));
    changeReading({ match: withOne<ListFact | null>(freed, column, fact) });
  };
  return (
    <table className="list-columns">
      <thead>
        <tr>
          <th scope="col">{text.column}</th>
          <th scope="col">{text.meaning}</th>
          <th scope="col">{text.writtenAs}</th>
          <th scope="col">{text.examples}</th>
        </tr>
      </thead>
      <tbody>
        {headers.map((given, column) => {
          const header = given === '' ? text.nameless(column + 1) : given;
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: columns stay where they are, and two may have one name.
            <tr key={column}>
              <th scope="row">{header}</th>
              <td>
                <SelectField
                  label={text.meaningOf(header)}
                  isLabelUnseen
                  value={match[column] ?? notUsed}
                  options={[
                    { value: notUsed, label: text.unused },
                    ...listFacts.map((fact) => ({ value: fact, label: factNames[fact] })),
                  ]}
                  onChange={(value) => choose(column, value === notUsed ? null : (value as ListFact))}
                />
              </td>
              <td>
                <Form list={list} column={column} header={header} />
              </td>
              <td className="list-examples">{examples[column]?.join(' · ')}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
