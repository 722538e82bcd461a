// The letter that asks a provider for one code: which vehicle, which device, which kind of code, proof of ownership, who asks, where the
// answer goes. One request, one letter. It asks for a code and never holds one.
import type { CodeKindFacts } from '../codes/code-kinds.ts';
import { codeKindName, codeKindOf } from '../codes/code-name.ts';
import type { CodeRequest } from '../codes/code-request.ts';
import { whyNotAskable } from '../codes/request-rules.ts';
import type { Shop } from '../fleet/shop.ts';
import { showDay } from '../shared/show-day.ts';
import { vehicleTitle } from '../vehicle/identity.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { requestReference } from './request-reference.ts';
import type { Sheet, SheetBlock } from './sheet.ts';
import { barcodes, frameSheet, type Printing } from './sheet-frame.ts';
import { groupVin, personName, sentence } from './sheet-words.ts';

type KnownKinds = { readonly codeKinds: readonly CodeKindFacts[] };

/** Requests that still wait for an answer: nobody writes for what was given or refused, or for what is closed. */
function isOpen({ answeredOn, closedOn }: CodeRequest): boolean {
  return answeredOn === null && closedOn === null;
}

/** Why this request cannot be written about; of the settings only the kinds of codes count. Null when it can. */
export function whyNotWritten(
  request: CodeRequest,
  { identity }: Pick<Vehicle, 'identity'>,
  shop: KnownKinds,
): string | null {
  if (request.askedOf.trim() === '') return 'Say whom the code is asked of, then print the letter.';
  const kind = codeKindOf(shop.codeKinds, request.kind);
  if (kind === null) return 'The shop no longer knows this kind of code. Choose its kind again, then print the letter.';
  const problems = whyNotAskable(request, identity.vin, kind);
  return problems.length === 0 ? null : problems.map((problem) => problem.sentence).join(' ');
}

/** The requests of which a letter can be printed now, by id, in the order of the record. */
export function letterRequests(vehicle: Vehicle, shop: KnownKinds): readonly string[] {
  return vehicle.codeRequests
    .filter((one) => isOpen(one) && whyNotWritten(one, vehicle, shop) === null)
    .map(({ id }) => id);
}

function requestFor(vehicle: Vehicle, shop: Shop, requestId: string | null): CodeRequest | null {
  const wanted = requestId ?? letterRequests(vehicle, shop)[0];
  return vehicle.codeRequests.find(wanted === undefined ? isOpen : ({ id }) => id === wanted) ?? null;
}

/** Why no letter may be printed: most of all while no proof of ownership is recorded (`whyNotAskable`). Null when it may. */
export function whyNoCodeLetter(vehicle: Vehicle, shop: Shop, requestId: string | null): string | null {
  const request = requestFor(vehicle, shop, requestId);
  if (request === null)
    return requestId === null
      ? 'No code of this vehicle waits for an answer, so there is nobody to write to.'
      : 'This code request is no longer in the record. Print the letter of another one.';
  return whyNotWritten(request, vehicle, shop);
}

function table(caption: string, rows: readonly (readonly [label: string, value: string])[]): SheetBlock {
  return {
    kind: 'table',
    caption,
    columns: [
      { title: 'About', share: 28, align: 'left' },
      { title: 'As on record', share: 72, align: 'left' },
    ],
    rows: rows
      .filter(([, value]) => value !== '')
      .map(([label, value]) => [
        { text: label, emphasis: 'quiet' },
        { text: value, emphasis: 'strong' },
      ]),
    whenEmpty: '',
    rowRoom: 'text',
  };
}

function paragraph(text: string, emphasis: 'none' | 'strong' | 'quiet' = 'none'): SheetBlock {
  return { kind: 'paragraph', text, emphasis };
}

function vehicleAndDevice({ identity }: Vehicle, request: CodeRequest, kindName: string): SheetBlock[] {
  return [
    table('The code that is asked for, the vehicle and the device it belongs to', [
      ['Code asked for', kindName],
      ['VIN', identity.vin === '' ? '' : groupVin(identity.vin)],
      ['Vehicle', vehicleTitle(identity)],
      ['Unit', request.module],
      ['Serial number of the device', request.deviceSerial],
      ['Why it is needed', request.reason],
    ]),
    ...barcodes(identity).filter((block) => block.kind === 'barcode' && block.label === 'VIN'),
  ];
}

function proofBlocks({ proof }: CodeRequest, { purchase }: Vehicle, shop: Shop): SheetBlock[] {
  if (proof === null) return [];
  return [
    { kind: 'heading', level: 2, text: 'Proof of ownership' },
    table('Proof of ownership: which document, when it was checked, by whom', [
      ['Document', proof.document],
      ['Checked on', showDay(proof.checkedOn, shop.dealer.dayForm)],
      ['Checked by', personName(shop.people, proof.checkedBy)],
      ['In our stock since', showDay(purchase.boughtOn, shop.dealer.dayForm)],
    ]),
  ];
}

function replyTo({ dealer }: Shop): string {
  return [dealer.name, dealer.address, dealer.phone].filter((line) => line.trim() !== '').join('\n');
}

const footer =
  'This letter asks for a code for a vehicle that the sender owns. Answer to the sender alone; send no code to anybody who asks in its name by another way.';

/**
 * The letter for one request, or for the first of which a letter can be printed.
 * @throws when it may not be printed: ask `whyNoCodeLetter` first.
 */
export function codeLetter(
  vehicle: Vehicle,
  shop: Shop,
  printed: Printing,
  about: { readonly today: string; readonly requestId: string | null },
): Sheet {
  const why = whyNoCodeLetter(vehicle, shop, about.requestId);
  const request = requestFor(vehicle, shop, about.requestId);
  if (why !== null || request === null) throw new Error(why ?? 'There is no code request to write about.');
  const kindName = codeKindName(request.kind, shop.codeKinds);
  const reference = requestReference(vehicle, request);
  const blocks: SheetBlock[] = [
    {
      kind: 'letter-head',
      addressee: request.askedOf,
      rows: [
        { label: 'Date', value: showDay(about.today, shop.dealer.dayForm) },
        { label: 'Our reference, please repeat it', value: reference },
        { label: 'Asked by', value: printed.by },
        ...(request.credentialReference === '' ? [] : [{ label: 'Credential', value: request.credentialReference }]),
        { label: 'Reply to', value: replyTo(shop) },
      ],
      about: `${kindName} for VIN ${groupVin(vehicle.identity.vin)}`,
    },
    paragraph('We own the vehicle named below and ask you for the code named here. Please send it to us alone.'),
    ...vehicleAndDevice(vehicle, request, kindName),
    ...proofBlocks(request, vehicle, shop),
    paragraph(
      sentence(
        'If something is missing, or you may not give the code, tell us which document you need or why, and name our reference',
      ),
    ),
    { kind: 'signatures', labels: [`For ${shop.dealer.name}: signature`, 'Name, day'] },
  ];
  return frameSheet('code-letter', 'Code request', vehicle, shop, printed, { blocks, footer });
}
