// Who works here and in which role. People are switched off rather than removed once records name them.
import type { Person } from '../../../app/domain/fleet/shop.ts';
import { roleSchema } from '../../../app/domain/fleet/shop.ts';
import { newIdentifier } from '../../state/new-identifier.ts';
import { typeIntoShop } from '../../state/shop-store.ts';
import { roleNames } from '../../text/common.ts';
import { setupText } from '../../text/setup.ts';
import { Button } from '../../ui/button.tsx';
import { CheckField } from '../../ui/check-field.tsx';
import { MoneyField } from '../../ui/money-field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { focusLastField } from './focus-last-field.ts';
import { RemoveCell } from './remove-cell.tsx';
import { problemAt, SectionForm, type SectionProps } from './section-form.tsx';

const roles = roleSchema.options.map((value) => ({ value, label: roleNames[value] }));

export function PeopleSection({
  kept,
  currency,
  ...section
}: SectionProps & { readonly kept: readonly Person[]; readonly currency: string }) {
  const { state } = section;
  const people = state.drafts.people ?? kept;
  const isReadOnly = section.readOnlyReason !== null;
  const change = (index: number, fields: Partial<Person>) => {
    const field = `${index}.${Object.keys(fields)[0] ?? ''}`;
    const changed = people.map((person, at) => (at === index ? { ...person, ...fields } : person));
    typeIntoShop('people', changed, field);
  };
  const add = () => {
    const person: Person = {
      id: newIdentifier(),
      name: '',
      role: 'technician',
      labourCentsPerHour: null,
      isActive: true,
    };
    typeIntoShop('people', [...people, person], '');
    focusLastField('people');
  };
  const at = (index: number, field: keyof Person) => ({
    problem: problemAt(state, 'people', `${index}.${field}`),
    isReadOnly,
    isLabelUnseen: true,
  });
  return (
    <SectionForm
      {...section}
      part="people"
      count={people.length}
      hint={setupText.peopleHint}
      extraAction={
        !isReadOnly && (
          <Button kind="quiet" onPress={add}>
            {setupText.addPerson}
          </Button>
        )
      }
    >
      <table className="setup-table">
        <thead>
          <tr>
            <th scope="col">{setupText.person}</th>
            <th scope="col">{setupText.role}</th>
            <th scope="col" className="amount">
              {setupText.ownRate}
            </th>
            <th scope="col">{setupText.active}</th>
            <td />
          </tr>
        </thead>
        <tbody>
          {people.map((person, index) => {
            const name = person.name.trim() || setupText.unnamed(index + 1);
            return (
              <tr key={person.id} className={person.isActive ? undefined : 'is-inactive'}>
                <td>
                  <TextField
                    label={setupText.nameOf(index + 1)}
                    value={person.name}
                    onChange={(value) => change(index, { name: value })}
                    {...at(index, 'name')}
                  />
                </td>
                <td>
                  <SelectField
                    label={setupText.roleOf(name)}
                    value={person.role}
                    options={roles}
                    onChange={(role) => change(index, { role })}
                    {...at(index, 'role')}
                  />
                </td>
                <td>
                  <MoneyField
                    label={setupText.rateOf(name)}
                    valueCents={person.labourCentsPerHour}
                    currency={currency}
                    onChange={(labourCentsPerHour) => change(index, { labourCentsPerHour })}
                    placeholder={setupText.shopRate}
                    {...at(index, 'labourCentsPerHour')}
                  />
                </td>
                <td>
                  <CheckField
                    label={setupText.activeOf(name)}
                    value={person.isActive}
                    onChange={(isActive) => change(index, { isActive })}
                    {...at(index, 'isActive')}
                  />
                </td>
                <RemoveCell
                  isReadOnly={isReadOnly}
                  label={setupText.removeOf(name)}
                  word={setupText.remove}
                  onRemove={() =>
                    typeIntoShop(
                      'people',
                      people.filter((other) => other.id !== person.id),
                      '',
                    )
                  }
                />
              </tr>
            );
          })}
        </tbody>
      </table>
    </SectionForm>
  );
}
