// Drafts of the forms whose fields are not the fact's own: what is typed becomes the fact, and the fact opened again is what was typed.
import { describe, expect, it } from 'vitest';
import { codeRequestDraftSchema } from '../../../../app/domain/codes/code-request.ts';
import { faultDraftSchema } from '../../../../app/domain/diagnosis/fault.ts';
import { scanDraftSchema } from '../../../../app/domain/diagnosis/scan.ts';
import { programmingJobDraftSchema } from '../../../../app/domain/programming/programming-job.ts';
import { codeRequestValue, finishCodeRequest } from '../../../../renderer/screens/vehicle/codes/code-draft.ts';
import { faultValue, finishFault } from '../../../../renderer/screens/vehicle/faults/fault-draft.ts';
import { freshCodeRequest, freshFault } from '../../../../renderer/screens/vehicle/fresh-facts.ts';
import { withoutStamp } from '../../../../renderer/screens/vehicle/ledger/fact-kind.ts';
import { freshJob } from '../../../../renderer/screens/vehicle/programming/fresh-job.ts';
import { finishJob, jobValue, movedStep } from '../../../../renderer/screens/vehicle/programming/job-draft.ts';
import { finishScan, scanValue } from '../../../../renderer/screens/vehicle/scans/scan-draft.ts';
import { exampleVehicle } from '../../../helpers/sheet-example.ts';

let made = 0;
const newIdentifier = () => {
  made += 1;
  return `made-${String(made).padStart(4, '0')}`;
};

function finished(result: { readonly ok: boolean; readonly value?: unknown }): unknown {
  if (!result.ok) throw new Error('Refused.');
  return result.value;
}

describe('opening and saving without a change', () => {
  it('leaves a fault as it was', () => {
    expect(exampleVehicle.faults.length).toBeGreaterThan(2);
    for (const kept of exampleVehicle.faults) {
      const fault = withoutStamp<typeof kept>(kept);
      expect(faultDraftSchema.parse(finished(finishFault(faultValue(fault))))).toEqual(fault);
    }
  });

  it('leaves a code request as it was', () => {
    for (const kept of exampleVehicle.codeRequests) {
      const request = withoutStamp<typeof kept>(kept);
      expect(codeRequestDraftSchema.parse(finished(finishCodeRequest(codeRequestValue(request))))).toEqual(request);
    }
  });

  it('leaves a scan as it was', () => {
    for (const kept of exampleVehicle.scans) {
      const scan = withoutStamp<typeof kept>(kept);
      expect(scanDraftSchema.parse(finished(finishScan(scanValue(scan))))).toEqual(scan);
    }
  });

  it('leaves a programming job as it was', () => {
    for (const kept of exampleVehicle.jobs) {
      const job = withoutStamp<typeof kept>(kept);
      expect(programmingJobDraftSchema.parse(finished(finishJob(jobValue(job), 'hybrid', newIdentifier)))).toEqual(job);
    }
  });
});

describe('a fault being written', () => {
  const value = faultValue({ ...freshFault('fault-001', '2026-03-18'), what: 'Body module silent' });

  it('has no decision until one is chosen', () => {
    expect(faultDraftSchema.parse(finished(finishFault(value))).decision).toBeNull();
  });

  it('takes codes separated by spaces, each once, as the standard writes them', () => {
    const typed = { ...value, codes: 'u0140, B1000 u0140' };
    expect(faultDraftSchema.parse(finished(finishFault(typed))).codes).toEqual(['U0140', 'B1000']);
  });

  it('says at the codes what is none, words after a code too', () => {
    for (const codes of ['U01', 'U0140 lost contact'])
      expect(finishFault({ ...value, codes })).toMatchObject({ ok: false, error: [{ field: 'codes' }] });
  });
});

describe('a code request being written', () => {
  it('has no proof of ownership as long as no document is named', () => {
    const value = codeRequestValue(freshCodeRequest('code-0001', '2026-03-18'));
    const half = { ...value, proof: { document: ' ', checkedOn: '2026-03-18', checkedBy: 'mara' } };
    expect(codeRequestDraftSchema.parse(finished(finishCodeRequest(half))).proof).toBeNull();
  });
});

describe('a programming job being written', () => {
  const fresh = { ...freshJob('job-00001', '2026-03-18', exampleVehicle, null), module: 'Body control module' };

  it('begins with the usual steps unless that is declined', () => {
    const withSteps = programmingJobDraftSchema.parse(
      finished(finishJob(jobValue(fresh), 'combustion', newIdentifier)),
    );
    expect(withSteps.steps.length).toBeGreaterThan(8);
    expect(new Set(withSteps.steps.map((step) => step.id)).size).toBe(withSteps.steps.length);
    const declined = { ...jobValue(fresh), withUsualSteps: false };
    expect(programmingJobDraftSchema.parse(finished(finishJob(declined, 'combustion', newIdentifier))).steps).toEqual(
      [],
    );
  });

  it('takes the fault, the part and the code request that belong together', () => {
    const fault = exampleVehicle.faults.find((candidate) => candidate.id === 'fault-body') ?? null;
    const job = freshJob('job-00002', '2026-03-18', { ...exampleVehicle, jobs: [] }, fault);
    expect(job).toMatchObject({ faultId: 'fault-body', partId: 'part-body', codeRequestId: 'code-body' });
  });

  it('moves a step by one place and not beyond the ends', () => {
    const steps = exampleVehicle.jobs[0]?.steps ?? [];
    const ids = (list: typeof steps | ReturnType<typeof movedStep>) => list.map((step) => step.id);
    const moved = movedStep(steps, 1, -1);
    expect(ids(moved).slice(0, 2)).toEqual([steps[1]?.id, steps[0]?.id]);
    expect(movedStep(steps, 0, -1)).toBe(steps);
    expect(movedStep(steps, steps.length - 1, 1)).toBe(steps);
  });
});
