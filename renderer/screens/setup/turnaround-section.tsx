// What forecasts take for waits and work where the shop's own history is silent.
import { type TurnaroundSettings, timeOfKind, turnaroundKinds } from '../../../app/domain/time/turnaround-settings.ts';
import { typeIntoShop } from '../../state/shop-store.ts';
import { setupMoneyText as text } from '../../text/setup-money.ts';
import { NumberField } from '../../ui/number-field.tsx';
import { problemAt, SectionForm, type SectionProps } from './section-form.tsx';

const works = ['inspect', 'repair', 'step', 'fit', 'verify', 'present'] as const;

export function TurnaroundSection({ kept, ...section }: SectionProps & { readonly kept: TurnaroundSettings }) {
  const { state } = section;
  const settings = state.drafts.turnaround ?? kept;
  const at = (field: string) => ({
    problem: problemAt(state, 'turnaround', field),
    isReadOnly: section.readOnlyReason !== null,
    isRequired: true,
  });
  return (
    <SectionForm {...section} part="turnaround" hint={text.turnaroundHint}>
      <div className="field-grid">
        <NumberField
          label={text.fewestCases}
          value={settings.fewestCases}
          onChange={(fewestCases) => typeIntoShop('turnaround', { ...settings, fewestCases }, 'fewestCases')}
          unit={text.cases}
          minimum={1}
          maximum={100}
          {...at('fewestCases')}
        />
      </div>
      <h3 className="setup-part">{text.waits}</h3>
      <div className="field-grid">
        {turnaroundKinds.map((kind) => (
          <NumberField
            key={kind}
            label={text.kinds[kind]}
            value={settings.days[kind]}
            onChange={(days) =>
              typeIntoShop('turnaround', { ...settings, days: { ...settings.days, [kind]: days } }, `days.${kind}`)
            }
            unit={timeOfKind[kind] === 'turn' ? text.workDays : text.days}
            maximum={365}
            {...at(`days.${kind}`)}
          />
        ))}
      </div>
      <h3 className="setup-part">{text.work}</h3>
      <div className="field-grid">
        {works.map((work) => (
          <NumberField
            key={work}
            label={text.minutes[work]}
            value={settings.minutes[work]}
            onChange={(minutes) =>
              typeIntoShop(
                'turnaround',
                { ...settings, minutes: { ...settings.minutes, [work]: minutes } },
                `minutes.${work}`,
              )
            }
            unit={text.minutesUnit}
            maximum={6000}
            {...at(`minutes.${work}`)}
          />
        ))}
      </div>
    </SectionForm>
  );
}
