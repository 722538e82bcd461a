// Facts with nothing said yet, to which a story adds what it tells.

import { noRequestLife } from '../../domain/codes/request-facts.ts';

export const blankPart = {
  partNumber: '',
  supplier: '',
  quantity: 1,
  priceCents: null,
  coreChargeCents: 0,
  orderedOn: null,
  expectedOn: null,
  receivedOn: null,
  fittedOn: null,
  returnedOn: null,
  coreReturnedOn: null,
  chases: [],
  note: '',
};

export const blankCodeRequest = { answeredOn: null, outcome: null, keptWhere: '', note: '', ...noRequestLife };

export const blankSublet = { backOn: null, invoicedCents: null, chases: [] };
