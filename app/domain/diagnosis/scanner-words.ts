// Words that scanners of several languages print: data for reading pasted text, and the folding that makes them comparable. English,
// German, French, Spanish, Italian, Polish and Dutch; general words of these languages, from memory, not from any one device's texts.
import type { ScanCodeStatus } from './scan.ts';

const plainLetters: Readonly<Record<string, string>> = {
  ß: 's',
  ł: 'l',
  Ł: 'l',
  œ: 'o',
  æ: 'a',
  ø: 'o',
  đ: 'd',
  '’': "'",
  '\u00a0': ' ',
};

/** ASCII only: nothing to take apart, and lower case keeps each character's place. */
const isPlain = /^[\t\n\r -~]*$/;

/** Lower case without accents, character for character, so that a place in the folded text is the same place in the text. */
export function foldText(text: string): string {
  if (isPlain.test(text)) return text.toLowerCase();
  let folded = '';
  for (let index = 0; index < text.length; index += 1) {
    const character = text.charAt(index);
    const plain = plainLetters[character] ?? character.normalize('NFD').charAt(0).toLowerCase();
    folded += plain.length === 1 ? plain : character;
  }
  return folded;
}

const list = (text: string): readonly string[] =>
  text.split(',').map((one) => foldText(one.trim().replace(/\s+/g, ' ')));

const statusTexts: readonly (readonly [ScanCodeStatus, string])[] = [
  [
    'present',
    `present, present now, currently present, current, currently, active, failing, failing now, static,
    aktuell, vorhanden, aktuell vorhanden, aktiv, statisch, liegt an, présent, présente, actuel, actif, active, presente, actual, activo, activa,
    attuale, attivo, attiva, presenti, présents, présentes, actifs, presentes, activos, attivi, vorhandene, aktive, aktuelle, obecne, aktywne,
    aktualne, bieżące, aanwezige, actieve, actuele, obecny, obecna, aktualny, aktywny, bieżący, występuje, aanwezig, actueel, actief`,
  ],
  [
    'history',
    `stored, confirmed, history, historic, historical, past, not present, not present now, not currently present, not active, not current,
    inactive, passive, intermittent, sporadic, in memory, old, latched, gespeichert, abgelegt, passiv, sporadisch, nicht vorhanden,
    aktuell nicht vorhanden, nicht aktiv, inaktiv, historisch, vergangen, mémorisé, mémorisée, enregistré, enregistrée, passé, historique,
    non présent, absent, inactif, fugitif, intermittent, memorizado, memorizada, almacenado, almacenada, guardado, histórico, pasado, no presente,
    inactivo, esporádico, intermitente, memorizzato, memorizzata, storico, passato, non presente, non attivo, inattivo, sporadico, intermittente,
    zapisany, zapisana, zapamiętany, historyczny, przeszły, nieobecny, nieaktywny, sporadyczny, w pamięci, opgeslagen, niet aanwezig, niet actief,
    inactief, verleden, in het geheugen, gespeicherte, abgelegte, sporadische, passive, mémorisés, mémorisées, enregistrés, passés,
    memorizados, memorizadas, almacenados, almacenadas, guardados, históricos, pasados, esporádicos, memorizzati, memorizzate, storici, passati,
    sporadici, intermittenti, zapisane, zapamiętane, historyczne, nieobecne, nieaktywne, sporadyczne, historische, niet aanwezige`,
  ],
  [
    'pending',
    `pending, not yet confirmed, unconfirmed, provisional, ausstehend, vorläufig, unbestätigt, en attente, provisoire, pendiente, provisional,
    no confirmado, in attesa, pendente, provvisorio, non confermato, oczekujący, oczekująca, tymczasowy, niepotwierdzony, in afwachting, hangend,
    voorlopig, niet bevestigd, ausstehende, vorläufige, provisoires, pendientes, provisionales, pendenti, provvisori, oczekujące, tymczasowe,
    hangende, voorlopige`,
  ],
  [
    'permanent',
    'permanent, permanently stored, dauerhaft, dauerhafte, permanente, permanents, permanentes, permanenti, permanent opgeslagen, blijvend, blijvende, trwały, trwała, trwałe, stały, stałe',
  ],
];

/** Folded phrase to status. Longer phrases are tried first by whoever reads with it. */
export const statusByPhrase: ReadonlyMap<string, ScanCodeStatus> = new Map(
  statusTexts.flatMap(([status, text]) => list(text).map((phrase) => [phrase, status] as const)),
);

/** Status words that also turn up inside descriptions ("sensor current", "fuel present"): they count only when they stand alone. */
export const doubtfulStatusWords: ReadonlySet<string> = new Set(
  list(`present, current, active, currently, static, past, old, passive, permanent, actual, aktuell, aktiv, passiv, statisch, actif, actuel,
  passé, actueel, actief, attivo, attuale, passato, stały, absent, confirmed, historic, latched, failing, vorhanden, aanwezig, provisional`),
);

/** Words around a status that say nothing themselves. */
export const fillerWords: ReadonlySet<string> = new Set(
  list(`code, codes, dtc, dtcs, fault, faults, error, errors, trouble, failure, failures, status, state, now, and, or, is, the,
  fehler, fehlercode, fehlercodes, fehlerstatus, störung, störungen, zustand, und, der, die, défaut, défauts, panne, état, et, le, les, de, du,
  avería, averías, fallo, fallos, código, códigos, estado, y, guasto, guasti, errore, errori, codice, codici, stato, e,
  błąd, błędy, kod, kody, kodu, usterka, usterki, stan, i, fout, fouten, foutcode, foutcodes, storing, storingen, toestand, en`),
);

/** Phrases that say that a test has not run since the codes were cleared. Folded; looked for anywhere beside a code. */
export const unprovenPhrases: readonly string[] =
  list(`not tested since, not completed since, not complete since, not run since, incomplete since, test not complete, test not completed,
  test incomplete, not yet tested, seit dem löschen nicht geprüft, test nicht abgeschlossen, noch nicht geprüft, test non terminé, non testé depuis,
  prueba no completada, sin comprobar desde, test non completato, non verificato dopo, test niezakończony, nie sprawdzono od, test niet voltooid,
  nog niet getest`);

export const silentPhrases: readonly string[] =
  list(`silent, no answer, no response, no reply, no communication, no contact, not responding,
  does not answer, does not respond, does not reply, did not answer, did not respond, not answering, not reachable, unreachable, timed out,
  keine antwort, antwortet nicht, keine kommunikation, keine verbindung, nicht erreichbar, meldet sich nicht, pas de réponse, aucune réponse,
  ne répond pas, pas de communication, injoignable, sin respuesta, no responde, no contesta, sin comunicación, nessuna risposta, non risponde,
  nessuna comunicazione, non raggiungibile, brak odpowiedzi, nie odpowiada, brak komunikacji, brak łączności, geen antwoord, antwoordt niet,
  reageert niet, geen communicatie, niet bereikbaar`);

export const noCodePhrases: readonly string[] =
  list(`no codes, no fault codes, no trouble codes, no faults, no faults found, no fault, no dtc,
  no dtcs, no errors, no code, nothing stored, free of faults, keine fehler, kein fehler, keine fehlercodes, fehlerfrei, kein eintrag,
  keine einträge, aucun défaut, aucun code, aucune panne, pas de défaut, sans défaut, sin averías, sin fallos, sin códigos, ninguna avería,
  ningún código, ningún fallo, nessun guasto, nessun errore, nessun codice, brak błędów, brak kodów, brak usterek, brak błędu, geen fouten,
  geen storingen, geen foutcodes, geen codes`);

/** Short words that mean "no codes" only when they fill a whole field. */
export const noCodeFields: ReadonlySet<string> = new Set(
  list('ok, okay, none, i.o, in ordnung, bon, aucun, aucune, bien, ninguno, nessuno, brak, geen, keine, kein'),
);

/** Words that make a line without a code look like the name of a control module. */
export const moduleWords: ReadonlySet<string> = new Set(
  list(`module, control, management, unit, ecu, controller, computer, gateway, engine, powertrain, transmission, gearbox, body, brake, brakes, steering, airbag, restraint,
  restraints, cluster, instrument, instruments, radio, immobiliser, immobilizer, key, keys, keyless, door, seat, camera, radar, battery, climate,
  heater, parking, lock, lights, lighting, suspension, hub, receiver, amplifier, mirror, tailgate, roof, ecm, pcm, tcm, bcm, abs, srs, eps, hvac,
  steuergerät, steuergeräte, motor, getriebe, karosserie, bremse, bremsen, lenkung, kombiinstrument, wegfahrsperre, tür, sitz, klimaanlage, batterie,
  bordnetz, motorsteuergerät, türsteuergerät, motorsteuerung, lenkradschloss, anhänger, calculateur, boîtier, moteur, boîte, carrosserie, frein, freins,
  direction, combiné, antidémarrage, porte, siège, climatisation, habitacle, unidad, módulo, caja, carrocería, freno, frenos, dirección, cuadro,
  inmovilizador, puerta, asiento, climatizador, pasarela, centralina, modulo, motore, cambio, carrozzeria, freni, sterzo, quadro, porta, sedile,
  clima, sterownik, moduł, silnik, silnika, skrzynia, skrzyni, nadwozie, nadwozia, hamulce, hamulców, układ, zegary, drzwi, fotel, klimatyzacja, brama,
  regeleenheid, motormanagement, versnellingsbak, carrosseriemodule, remmen, stuur, stuurinrichting, stuurslot, instrumentenpaneel, startonderbreker,
  deur, deuren, stoel`),
);

/** Words of a description: a text with one of them is about a fault and names no module. */
export const descriptionWords: ReadonlySet<string> = new Set(
  list(`circuit, voltage, sensor, signal, malfunction, invalid, missing, open, short, shorted, high, low, performance, misfire, lost, loss, range,
  implausible, plausibility, detected, correlation, efficiency, pressure, temperature, stuck, communication, bus, data, supply, resistance, limit,
  spannung, stromkreis, signalfehler, kurzschluss, unterbrechung, unplausibel, fehlt, verloren, aussetzer, zündaussetzer, tension, circuit, signal,
  coupure, perte, raté, ratés, tensión, circuito, señal, pérdida, fallo, cortocircuito, tensione, segnale, perdita, mancata, napięcie, obwód, sygnał,
  zwarcie, utrata, spanning, stroomkring, signaal, kortsluiting, verlies, onderbreking, overslag, komunikacji, communicatie, kommunikation`),
);

/** Words of lines about the report, the vehicle or the device: never a module, never codes. */
export const reportWords: ReadonlySet<string> = new Set(
  list(`vin, vehicle, date, time, report, page, technician, customer, dealer, odometer, mileage, km, miles, plate, registration, software, version,
  serial, printed, workshop, operator, protocol, scan, scanned, readout, results, result, list, summary, total, totals, stock, order, note, notes, end,
  datum, uhrzeit, fahrzeug, kunde, seite, bericht, werkstatt, kilometerstand, ergebnis, prüfbericht, gesamt, véhicule, client, rapport, atelier, fecha, hora,
  vehículo, cliente, página, informe, taller, matrícula, data, ora, veicolo, pagina, rapporto, officina, targa, pojazd, klient, strona, raport, przebieg,
  voertuig, klant, pagina, verslag, werkplaats, kilometerstand, kenteken`),
);

/** Labels before a value, by what the value is. */
export const labelWords: ReadonlyMap<string, 'code' | 'module' | 'status' | 'words'> = new Map([
  ...list(`code, codes, dtc, dtcs, fault code, trouble code, fault, fehlercode, fehler, code défaut, défaut, défauts, código, códigos, avería, averías, codice,
    codici, guasto, guasti, errore, errori, kod, kody, błędy, usterki, faults, errors, fault codes, trouble codes, fouten, storingen, foutcodes,
  kod błędu, błąd, foutcode, fout`).map((word) => [word, 'code'] as const),
  ...list(`module, control module, unit, control unit, ecu, system, controller, where, steuergerät, system, calculateur, système, boîtier, unidad,
  unidad de control, módulo, sistema, centralina, modulo, sterownik, moduł, układ, regeleenheid, systeem`).map(
    (word) => [word, 'module'] as const,
  ),
  ...list('status, state, zustand, fehlerstatus, état, statut, estado, stato, stan, toestand').map(
    (word) => [word, 'status'] as const,
  ),
  ...list(`text, description, meaning, detail, details, words, count, counter, seen, beschreibung, fehlertext, bedeutung, häufigkeit, libellé, description,
  texte, descripción, texto, descrizione, testo, opis, znaczenie, omschrijving, tekst, betekenis`).map(
    (word) => [word, 'words'] as const,
  ),
]);

/** Words for several modules at once: a text with one of them names no single module. */
export const severalModulesWords: ReadonlySet<string> = new Set(
  list(
    'modules, units, ecus, controllers, all, alle, tous, toutes, todos, todas, tutti, tutte, wszystkie, steuergeräte, calculateurs, unidades, módulos, centraline, moduli, sterowniki, moduły, regeleenheden',
  ),
);

/** Nouns behind a number that make it a count of codes: '3 faults'. */
export const codeNouns: ReadonlySet<string> = new Set(
  list(`code, codes, fault, faults, dtc, dtcs, error, errors, entry, entries, fehler, eintrag, einträge, fehlercode, fehlercodes, défaut, défauts,
  avería, averías, fallo, fallos, código, códigos, guasto, guasti, errore, errori, codice, codici, błąd, błędy, błędów, usterka, usterki, usterek,
  kod, kody, kodów, fout, fouten, storing, storingen, foutcode, foutcodes`),
);

/** Words that may stand between "no answer" and the name that follows. */
export const silentConnectors =
  /^(?:[\s:;,.|–—-]+|(?:from|by|of|von|vom|de|du|des|da|dal|od|van|z|the|der|le|la|il)(?=[\s:]))+/;
