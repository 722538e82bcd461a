// Drafts of the forms whose fields are not the fact's own: what is typed becomes the fact, and the fact opened again is what was typed.
import { describe, expect, it } from 'vitest';
import { codeRequestDraftSchema } from '../../../../app/domain/codes/code-request.ts';
import { faultDraftSchema } from '../../../../app/domain/diagnosis/fault.ts';
import { scanDraftSchema } from '../../../../app/domain/diagnosis/scan.ts';
import { codeRequestValue, finishCodeRequest } from '../../../../renderer/screens/vehicle/codes/code-draft.ts';
import { faultValue, finishFault } from '../../../../renderer/screens/vehicle/faults/fault-draft.ts';
import { freshCodeRequest, freshFault } from '../../../../renderer/screens/vehicle/fresh-facts.ts';
import { withoutStamp } from '../../../../renderer/screens/vehicle/ledger/fact-kind.ts';
import { finishScan, scanValue } from '../../../../renderer/screens/vehicle/scans/scan-draft.ts';
import { exampleVehicle } from '../../../helpers/sheet-example.ts';

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
