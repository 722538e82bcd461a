// Requests for unlock codes: proof of ownership, asked, answered, and where the shop keeps what it was given. Never a code.
import { codeKindName, codeName } from '../../../../app/domain/codes/code-name.ts';
import { type CodeRequestDraft, codeRequestDraftSchema } from '../../../../app/domain/codes/code-request.ts';
import { type Day, daysBetween } from '../../../../app/domain/shared/day.ts';
import { capitalised } from '../../../../app/domain/sheets/sheet-words.ts';
import { sayDay } from '../../../text/say-day.ts';
import { vaultText } from '../../../text/vault.ts';
import { codeText, partText, sectionNames } from '../../../text/vehicle-entries.ts';
import { freshCodeRequest } from '../fresh-facts.ts';
import type { FactKind } from '../ledger/fact-kind.ts';
import { Ledger } from '../ledger/ledger.tsx';
import { type CodeFact, nextCodeFacts, withCodeFact } from '../next-facts.ts';
import { CautionLine } from '../page/caution-line.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { type CodeRequestValue, codeRequestValue, finishCodeRequest } from './code-draft.ts';
import { CodeForm } from './code-form.tsx';
import { CodeValueCell } from './code-value-cell.tsx';
import { CodeValueDialogs } from './code-value-dialogs.tsx';

const codeRequestKind: FactKind<CodeRequestDraft, CodeRequestValue> = {
  list: 'codeRequests',
  schema: codeRequestDraftSchema,
  toChange: (item) => ({ kind: 'put', list: 'codeRequests', item }),
  toValue: codeRequestValue,
  finish: finishCodeRequest,
};

function codeState(request: CodeRequestDraft, today: Day): string {
  const words = codeText.states;
  if (request.outcome !== null && request.answeredOn !== null)
    return words[request.outcome](sayDay(request.answeredOn, today));
  if (request.askedOn === null) return words.toAsk;
  const asked = words.asked(sayDay(request.askedOn, today));
  if (request.expectedOn === null) return `${asked}, ${partText.states.noPromise}`;
  const late = daysBetween(request.expectedOn, today);
  const expected = partText.states.expected(sayDay(request.expectedOn, today));
  return `${asked}, ${expected}${late > 0 ? `, ${partText.states.late(late)}` : ''}`;
}

/** What is worth adding right after a one-press button. */
const thenFocus: Readonly<Partial<Record<CodeFact, string>>> = { asked: 'askedOf', given: 'keptWhere' };

export function CodesSection() {
  const { vehicle, today, desk } = useVehicle();
  const requests = vehicle.codeRequests.toSorted(
    (a, b) => Number(a.answeredOn !== null) - Number(b.answeredOn !== null),
  );
  return (
    <Ledger
      section="codes"
      title={sectionNames.codes}
      kind={codeRequestKind}
      facts={requests}
      nameOf={(request) => capitalised(codeName(request, desk.shop?.codeKinds))}
      addLabel={codeText.add}
      emptySentence={codeText.empty}
      makeNew={(id) => freshCodeRequest(id, today)}
      isDone={(request) => request.outcome === 'given'}
      columns={[
        { title: codeText.kind, cell: (request) => codeKindName(request.kind, desk.shop?.codeKinds) },
        { title: codeText.module, cell: (request) => request.module },
        {
          title: codeText.proof,
          cell: (request) =>
            request.proof === null ? (
              <span className="quiet">{codeText.proofMissing}</span>
            ) : (
              `${request.proof.document}, ${sayDay(request.proof.checkedOn, today)}`
            ),
        },
        { title: codeText.askedOf, cell: (request) => request.askedOf },
        { title: codeText.state, cell: (request) => codeState(request, today) },
        { title: codeText.keptWhere, cell: (request) => request.keptWhere },
        {
          title: vaultText.column,
          cell: (request) => <CodeValueCell requestId={request.id} name={codeName(request, desk.shop?.codeKinds)} />,
        },
      ]}
      quickActions={(request) =>
        nextCodeFacts(request).map((fact) => {
          const focus = thenFocus[fact];
          return {
            label: codeText.quick[fact],
            apply: (kept: CodeRequestDraft) => withCodeFact(kept, fact, today),
            ...(focus === undefined ? {} : { thenFocus: focus }),
          };
        })
      }
      form={(edit) => <CodeForm edit={edit} />}
    >
      <CautionLine caution="anti-theft-code" more={codeText.neverTheCode} />
      <CodeValueDialogs />
    </Ledger>
  );
}
