// Requests for unlock codes: proof of ownership first, asked, chased, answered, tried, closed, and where the shop keeps what it was given.
// Never a code.
import './codes.css';
import { shippedCodeKinds } from '../../../../app/domain/codes/code-kinds.ts';
import { codeKindOf, codeName } from '../../../../app/domain/codes/code-name.ts';
import { type CodeRequestDraft, codeRequestDraftSchema } from '../../../../app/domain/codes/code-request.ts';
import { failsSince } from '../../../../app/domain/codes/request-life.ts';
import { capitalised } from '../../../../app/domain/sheets/sheet-words.ts';
import { newIdentifier } from '../../../state/new-identifier.ts';
import { useKeptCodes } from '../../../state/vault-store.ts';
import { codeText } from '../../../text/codes.ts';
import { sayDay } from '../../../text/say-day.ts';
import { vaultText } from '../../../text/vault.ts';
import { sectionNames } from '../../../text/vehicle-entries.ts';
import { freshCodeRequest } from '../fresh-facts.ts';
import type { FactKind } from '../ledger/fact-kind.ts';
import { Ledger } from '../ledger/ledger.tsx';
import { type CodeFact, nextCodeFacts, withCodeFact } from '../next-facts.ts';
import { CautionLine } from '../page/caution-line.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { type CodeRequestValue, codeRequestValue, finishCodeRequest } from './code-draft.ts';
import { CodeForm } from './code-form.tsx';
import { CodeLetterButton } from './code-letter-button.tsx';
import { CodeNext } from './code-next.tsx';
import { codeState, instantOn } from './code-state.ts';
import { CodeValueCell } from './code-value-cell.tsx';
import { CodeValueDialogs } from './code-value-dialogs.tsx';
import { lockedAfter } from './fresh-life.ts';
import { RemoveWithCode } from './remove-with-code.tsx';
import { useCodesUsual } from './use-codes-usual.ts';

const codeRequestKind: FactKind<CodeRequestDraft, CodeRequestValue> = {
  list: 'codeRequests',
  schema: codeRequestDraftSchema,
  toChange: (item) => ({ kind: 'put', list: 'codeRequests', item }),
  toValue: codeRequestValue,
  finish: finishCodeRequest,
};

/** What is worth adding right after a one-press button: the field of the form, by its name. */
function worthAdding(request: CodeRequestDraft, fact: CodeFact): string | undefined {
  if (fact === 'asked') return 'askedOf';
  if (fact === 'given') return 'keptWhere';
  if (fact === 'chased') return `chases.${request.chases.length}.promisedOn`;
  return fact === 'wrong' ? `tries.${request.tries.length}.triesLeft` : undefined;
}

function isOver(request: CodeRequestDraft): boolean {
  return request.closedOn !== null || (request.outcome === 'given' && failsSince(request) === null);
}

export function CodesSection() {
  const { id, vehicle, view, today, desk, canPut, canNoteCodeLife } = useVehicle();
  const kinds = desk.shop?.codeKinds ?? shippedCodeKinds;
  const requests = vehicle.codeRequests.toSorted((a, b) => Number(isOver(a)) - Number(isOver(b)));
  const usual = useCodesUsual(
    id,
    view.revision,
    requests.some((request) => !isOver(request)),
  );
  const keptCodes = useKeptCodes();
  const now = instantOn(today, new Date());
  const mayAll = canPut('codeRequests');
  const nameOf = (request: CodeRequestDraft) => capitalised(codeName(request, kinds));
  return (
    <Ledger
      section="codes"
      title={sectionNames.codes}
      kind={codeRequestKind}
      facts={requests}
      nameOf={nameOf}
      canOpen={canNoteCodeLife}
      addLabel={codeText.add}
      emptySentence={codeText.empty}
      makeNew={(fresh) => freshCodeRequest(fresh, today)}
      isDone={isOver}
      columns={[
        { title: codeText.code, cell: nameOf },
        {
          title: codeText.proof,
          cell: (request) =>
            request.proof === null ? (
              <span className="quiet">{codeText.proofMissing}</span>
            ) : (
              `${request.proof.document}, ${sayDay(request.proof.checkedOn, today)}`
            ),
        },
        {
          title: codeText.askedOf,
          cell: (request) => (
            <>
              {request.askedOf}
              {request.askedOn !== null && request.askedHow !== null && (
                <span className="code-about">{codeText.ways[request.askedHow]}</span>
              )}
              <CodeLetterButton request={request} name={nameOf(request)} />
            </>
          ),
        },
        {
          title: codeText.state,
          cell: (request) => codeState(request, codeKindOf(kinds, request.kind), { today, now }),
        },
        {
          title: codeText.next,
          cell: (request) => (
            <div className="code-next">
              <CodeNext request={request} usual={usual.get(request.id)} />
            </div>
          ),
        },
        {
          title: vaultText.column,
          cell: (request) => (
            <>
              {request.keptWhere !== '' && <span className="code-about">{request.keptWhere}</span>}
              <CodeValueCell requestId={request.id} name={codeName(request, kinds)} />
            </>
          ),
        },
      ]}
      quickActions={(request) =>
        nextCodeFacts(request)
          .filter((fact) => mayAll || fact === 'chased' || fact === 'right' || fact === 'wrong')
          .map((fact) => {
            const focus = worthAdding(request, fact);
            return {
              label: codeText.quick[fact],
              apply: (kept: CodeRequestDraft) =>
                withCodeFact(kept, fact, {
                  today,
                  by: desk.person.id,
                  newId: newIdentifier(),
                  lockedUntil: lockedAfter(codeKindOf(kinds, kept.kind), instantOn(today, new Date())),
                }),
              ...(focus === undefined ? {} : { thenFocus: focus }),
            };
          })
      }
      beforeRemoving={(request, answers) =>
        keptCodes?.codes.some(({ requestId, state }) => requestId === request.id && state === 'held') ? (
          <RemoveWithCode name={nameOf(request)} {...answers} />
        ) : null
      }
      form={(edit) => <CodeForm edit={edit} />}
    >
      <CautionLine caution="anti-theft-code" more={codeText.neverTheCode} />
      <CodeValueDialogs />
    </Ledger>
  );
}
