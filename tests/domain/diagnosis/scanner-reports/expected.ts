// What each invented report must be read as, written by hand beside it. Modules with their codes and statuses in the order of the text;
// silent modules; and the numbers of the lines that are shown as not understood.

export type ExpectedReading = {
  readonly modules: Readonly<Record<string, readonly string[]>>;
  readonly silent: readonly string[];
  readonly notUnderstood: readonly number[];
};

export const expectedReadings: Readonly<Record<string, ExpectedReading>> = {
  '01-bars-with-headings': {
    modules: {
      'Engine control': ['P0301 present', 'P0420 history'],
      'Body control': ['B1234-11 history'],
      Gateway: [],
    },
    silent: ['Steering lock'],
    notUnderstood: [1],
  },
  '02-indented-list': {
    modules: {
      'Body control module': ['B1015 history', 'U0155 present'],
      Airbag: [],
      'Door, front left': ['B1108-13 history', 'B1109-13 pending'],
    },
    silent: ['Instrument cluster'],
    notUnderstood: [],
  },
  '03-one-code-a-line': {
    modules: { '': ['P0171 unknown', 'P0300 unknown', 'U0100-87 unknown', 'B2960 unknown'] },
    silent: [],
    notUnderstood: [],
  },
  '04-wrapped-lines': {
    modules: { 'Engine control': ['P0335 history', 'P0016 present'] },
    silent: [],
    notUnderstood: [],
  },
  '05-german-table': {
    modules: { Motorsteuerung: ['P0299 history', 'P0401 present'], Kombiinstrument: ['U0140 history'], Airbag: [] },
    silent: ['Bordnetz'],
    notUnderstood: [],
  },
  '06-french-blocks': {
    modules: { Moteur: ['P0201 present'], Antidémarrage: ['B1601 history'] },
    silent: ['Habitacle'],
    notUnderstood: [],
  },
  '07-spanish-semicolons': {
    modules: { Motor: ['P0118 present', 'P0130 history'], 'Caja de cambios': ['P0700 pending'], Cuadro: [] },
    silent: ['Cierre de dirección'],
    notUnderstood: [],
  },
  '08-italian-sections': {
    modules: {
      'CENTRALINA MOTORE': ['P0106 history', 'P0234 history', 'P0300 pending'],
      'CENTRALINA FRENI': ['C0040 history'],
    },
    silent: ['CENTRALINA QUADRO'],
    notUnderstood: [],
  },
  '09-polish-indented': {
    modules: {
      'Sterownik silnika': ['P0087 present', 'P0190 history'],
      'Sterownik skrzyni': [],
      Nadwozie: ['B1000 history'],
    },
    silent: ['Układ hamulcowy'],
    notUnderstood: [],
  },
  '10-dutch-colons': {
    modules: {
      Motormanagement: ['P0102 present', 'P0113 history'],
      Instrumentenpaneel: ['U0140 history'],
      Radio: [],
    },
    silent: ['Stuurslot'],
    notUnderstood: [],
  },
  // "present" ends a description here and might belong to it, so it is not taken for a status; "stored" cannot belong to one.
  '11-slips-of-recognition': {
    modules: {
      'ENGINE CONTROL': ['P0301 unknown (PO3O1)', 'P0171 history (P0I71)', 'P0420-00 history (P042O-OO)'],
      'BODY CONTROL': ['B1234 history (Bl234)', 'U0155 history (U01SS)'],
    },
    silent: [],
    notUnderstood: [],
  },
  '12-several-on-a-line': {
    modules: {
      ECM: ['P0301 history', 'P0302 history', 'P0303 history'],
      TCM: ['P0700 present'],
      ABS: ['C0035 pending', 'C0040 pending', 'U0129 pending'],
      SRS: [],
    },
    silent: ['EPS'],
    notUnderstood: [],
  },
  '13-csv-with-quotes': {
    modules: { Engine: ['P0128 history'], Climate: ['B1A24-1F present'] },
    silent: ['Rear camera'],
    notUnderstood: [],
  },
  '14-report-lines-around': {
    modules: { Engine: ['P0455 history', 'P0456 history'], 'Tail lift': ['B1500 present'] },
    silent: [],
    notUnderstood: [1, 2, 3, 4, 5, 14, 15],
  },
  '15-labelled-values-module-last': {
    modules: { Powertrain: ['P0562 history'], 'Distance radar': ['B10D2-54 present'], '': ['U0415 pending'] },
    silent: [],
    notUnderstood: [],
  },
  '16-tabs-status-first': {
    modules: {
      'Engine control': ['U0121 present'],
      'Instrument cluster': ['U0121 present'],
      Steering: ['U0121 history'],
    },
    silent: ['Brakes'],
    notUnderstood: [],
  },
  '17-status-byte-in-hex': {
    modules: { 'Unit 17 - cluster': ['U0140-00 present', 'B1212-51 present', 'B1213-54 unknown', 'B1214-13 history'] },
    silent: [],
    notUnderstood: [],
  },
  '18-prose': {
    modules: { '': ['P0301 unknown', 'P0420 unknown'] },
    silent: ['but the body module'],
    notUnderstood: [1, 4],
  },
  '19-numbers-of-another-kind': {
    modules: { Brakes: ['C1234 history'] },
    silent: [],
    notUnderstood: [2, 4, 5, 6, 7],
  },
  '20-leaders-and-bullets': {
    modules: { Engine: ['P0011 history', 'P0014 history'], Suspension: [] },
    silent: ['Keyless entry'],
    notUnderstood: [],
  },
  '21-permanent-and-pending-lists': {
    modules: { '': ['P0440 history', 'P0446 history', 'P0171 pending', 'P0440 permanent'] },
    silent: [],
    notUnderstood: [],
  },
  '22-two-buses-as-a-tree': {
    modules: {
      'Engine control': ['P0480 history'],
      Transmission: [],
      'Body control': ['U0184-87 present', 'U0155-87 present'],
    },
    silent: ['Radio', 'Cluster'],
    notUnderstood: [1, 6],
  },
  '23-flush-left-text-under-code': {
    modules: {
      Motorsteuergerät: ['P2015 history', 'P0404 present'],
      'Türsteuergerät hinten links': ['B1102-13 history'],
    },
    silent: [],
    notUnderstood: [],
  },
  '24-no-codes-at-all': { modules: { '': [] }, silent: [], notUnderstood: [1] },
  '25-windows-lines-and-odd-spaces': {
    modules: { Gearbox: ['P0741 pending', 'P0730 history'] },
    silent: ['Lift gate'],
    notUnderstood: [],
  },
  '26-no-answer-before-the-names': {
    modules: { 'Body control': ['U0184 present', 'U0230 present'], Gateway: ['U0184 present'] },
    silent: ['Radio', 'Rear camera', 'Tail lift'],
    notUnderstood: [2],
  },
  '27-labelled-headings-with-counts': {
    modules: { 'Door electronics, driver': ['B1108 history', 'B1121 present'], Sunroof: [] },
    silent: ['Amplifier'],
    notUnderstood: [2],
  },
  '28-code-first-short-names': {
    modules: { ECM: ['P0420 history'], IPC: ['U0140 history'], EPS: ['U0140 pending'], RCM: ['B1325 present'] },
    silent: [],
    notUnderstood: [1],
  },
  '29-silent-list-first': {
    modules: { Engine: ['P0301 present'], Brakes: ['C0035 history'] },
    silent: ['Steering lock', 'Radio', 'Tail lift'],
    notUnderstood: [1, 5],
  },
  '30-capitals-without-separators': {
    modules: { ENGINE: ['P0301 history'], BRAKES: ['C0035 unknown'] },
    silent: ['STEERING COLUMN LOCK'],
    notUnderstood: [],
  },
  '31-lettered-list': {
    modules: { ENGINE: ['P0301 present', 'P0302 history'], BODY: ['B1234 history'] },
    silent: ['RADIO'],
    notUnderstood: [],
  },
  '32-polish-labelled-values': { modules: { Silnik: ['P0087 present'] }, silent: [], notUnderstood: [] },
  '33-nothing-in-any-module': { modules: { '': [] }, silent: [], notUnderstood: [1] },
  '34-german-addresses': {
    modules: {
      'Adresse 01 Motor': ['P0171 unknown', 'P0174 unknown'],
      'Adresse 15 Airbag': [],
      'Adresse 17 Kombi': ['U0155 unknown'],
    },
    silent: ['Adresse 09 Bordnetz'],
    notUnderstood: [1],
  },
};
