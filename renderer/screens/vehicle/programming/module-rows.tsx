// The modules of a job in its form: what each is, where it comes from, and the part and code request that belong to it.

import { codeName } from '../../../../app/domain/codes/code-name.ts';
import { moduleKindSchema, moduleKindTitles } from '../../../../app/domain/programming/module-kind.ts';
import { moduleOriginSchema } from '../../../../app/domain/programming/module-origin.ts';
import type { JobModule } from '../../../../app/domain/programming/programming-job.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { jobText, originChoices } from '../../../text/programming.ts';
import { Button } from '../../../ui/button.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { chooseFrom, chooseOrNone, orNull, partChoices, usedWords } from '../ledger/choices.ts';
import { maySeeCodes } from '../may-change.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { blankModule, type JobValue, keptModule, offeredModules, renamed } from './job-draft.ts';

type RowProps = {
  readonly edit: Editing<JobValue>;
  readonly module: JobModule;
  readonly index: number;
  readonly names: readonly string[];
};

function ModuleRow({ edit, module, index, names }: RowProps) {
  const { vehicle, role, desk } = useVehicle();
  const { modules } = edit.value;
  const set = (changed: JobModule) => edit.set({ modules: modules.with(index, changed) });
  const at = (field: keyof JobModule) => edit.problemAt(`modules.${index}.${field}`);
  const requests = vehicle.codeRequests.map((request) => ({
    value: request.id,
    label: codeName(request, desk.shop?.codeKinds),
  }));
  return (
    <fieldset className="job-module">
      <legend className="field-label">{jobText.module(index + 1)}</legend>
      <TextField
        label={jobText.name}
        value={module.name}
        onChange={(name) => set(renamed(module, name))}
        problem={at('name')}
        list={names}
        isRequired
      />
      <SelectField
        label={jobText.kind}
        value={module.kind}
        onChange={(kind) => set({ ...module, kind })}
        problem={at('kind')}
        options={chooseFrom(moduleKindSchema.options, moduleKindTitles)}
      />
      <SelectField
        label={jobText.origin}
        value={module.origin}
        onChange={(origin) => set({ ...module, origin, partId: origin === 'kept' ? null : module.partId })}
        problem={at('origin')}
        options={chooseFrom(moduleOriginSchema.options, originChoices)}
      />
      {module.origin !== 'kept' && (
        <SelectField
          label={jobText.part}
          value={module.partId ?? ''}
          onChange={(chosen) => set({ ...module, partId: orNull(chosen) })}
          problem={at('partId')}
          options={partChoices(vehicle)}
        />
      )}
      {maySeeCodes(role) && (
        <SelectField
          label={jobText.code}
          value={module.codeRequestId ?? ''}
          onChange={(chosen) => set({ ...module, codeRequestId: orNull(chosen) })}
          problem={at('codeRequestId')}
          options={chooseOrNone(requests)}
        />
      )}
      <Button
        kind="quiet"
        label={jobText.takeOutModule(module.name || jobText.module(index + 1))}
        isDisabled={modules.length === 1}
        whyDisabled={jobText.keepOne}
        onPress={() => edit.set({ modules: modules.filter((_, place) => place !== index) })}
      >
        {jobText.takeOut}
      </Button>
    </fieldset>
  );
}

export function ModuleRows({ edit }: { readonly edit: Editing<JobValue> }) {
  const { vehicle } = useVehicle();
  const { modules } = edit.value;
  const names = usedWords([
    ...vehicle.faults.map((fault) => fault.module),
    ...vehicle.scans.flatMap((scan) => scan.modules.map((module) => module.name)),
  ]);
  const offered = offeredModules(modules, vehicle.identity.drive);
  const problem = edit.problemAt('modules');
  return (
    <fieldset className="field-group">
      <legend>{jobText.modules}</legend>
      {modules.map((module, index) => (
        <ModuleRow key={module.id} edit={edit} module={module} index={index} names={names} />
      ))}
      {problem !== undefined && modules.every((_, index) => edit.problemAt(`modules.${index}`) === undefined) && (
        <p className="field-problem" role="alert">
          {problem}
        </p>
      )}
      {offered.some(({ kind }) => kind === 'high-voltage') && <p className="field-hint">{jobText.highVoltageHint}</p>}
      <div className="job-module-offers">
        {offered.map(({ kind, name }) => (
          <Button key={kind} onPress={() => edit.set({ modules: [...modules, keptModule(kind, name, modules)] })}>
            {jobText.alsoKept(name)}
          </Button>
        ))}
        <Button onPress={() => edit.set({ modules: [...modules, blankModule(modules)] })}>{jobText.addModule}</Button>
      </div>
    </fieldset>
  );
}
