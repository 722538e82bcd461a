// Common words in the head lines of purchase lists, by fact: English, German, French, Spanish, Italian, Dutch and Polish; from memory.
import type { ListFact } from './list-columns.ts';

function words(text: string): readonly string[] {
  return text.split(', ');
}

/** Without accents, lower case, as `plainHeader` leaves them. */
export const listWords: Readonly<Record<ListFact, readonly string[]>> = {
  vin: words(
    'vin, vehicle identification number, chassis, chassis number, chassis no, fin, fahrgestellnummer, fahrgestellnr, ' +
      'fahrzeugidentifizierungsnummer, numero de chassis, numero de serie, bastidor, numero de bastidor, telaio, ' +
      'numero telaio, chassisnummer, numer vin, numer nadwozia',
  ),
  stockNumber: words(
    'stock, stock number, stock no, stock nr, stock id, lagernummer, lagernr, bestandsnummer, numero de stock, n stock, ' +
      'numero de existencias, numero stock, voorraadnummer, numer magazynowy, unit number, inventory number',
  ),
  modelYear: words(
    'year, model year, my, yr, baujahr, modelljahr, annee, annee modele, millesime, ano, ano modelo, anno, anno modello, ' +
      'bouwjaar, modeljaar, rok, rocznik, rok produkcji',
  ),
  make: words('make, brand, marke, hersteller, fabrikat, marque, marca, merk, marka, manufacturer'),
  model: words('model, modell, modele, modelo, modello, type, typ'),
  body: words('body, body style, body type, aufbau, karosserie, carrosserie, carroceria, carrozzeria, nadwozie'),
  colour: words('colour, color, exterior color, exterior colour, farbe, lackfarbe, couleur, colore, kleur, kolor'),
  odometer: words(
    'odometer, mileage, miles, odo, km, kms, kilometres, kilometers, kilometerstand, km stand, laufleistung, kilometrage, ' +
      'kilometraje, chilometri, chilometraggio, przebieg',
  ),
  boughtOn: words(
    'purchase date, date purchased, bought on, bought, sale date, auction date, date of purchase, kaufdatum, ' +
      'einkaufsdatum, ankaufsdatum, date achat, date d achat, fecha de compra, fecha compra, data acquisto, ' +
      'data di acquisto, aankoopdatum, inkoopdatum, data zakupu, date, datum, fecha, data',
  ),
  source: words(
    'source, seller, vendor, bought from, supplier, auction, lieferant, verkaufer, herkunft, quelle, vendeur, ' +
      'fournisseur, provenance, vendedor, proveedor, venditore, fornitore, leverancier, verkoper, sprzedawca, dostawca',
  ),
  price: words(
    'price, purchase price, cost, hammer price, hammer, buy price, bought for, bid, winning bid, einkaufspreis, ' +
      'kaufpreis, preis, ek, ek preis, zuschlag, prix, prix achat, prix d achat, precio, precio de compra, prezzo, ' +
      'prezzo di acquisto, prezzo acquisto, prijs, inkoopprijs, aankoopprijs, cena, cena zakupu, amount',
  ),
  fees: words(
    'fee, fees, buyer fee, buyers fee, buyer s fee, auction fee, auction fees, gebuhr, gebuhren, auktionsgebuhr, frais, ' +
      'tasas, gastos, comision, spese, commissioni, kosten, veilingkosten, oplata, oplaty, premium, buyer s premium',
  ),
  transport: words(
    'transport, transport cost, freight, shipping, delivery, delivery cost, haulage, transportkosten, fracht, ' +
      'uberfuhrung, livraison, transporte, porte, portes, trasporto, vervoer, vracht, dostawa',
  ),
  asking: words(
    'asking price, asking, list price, retail, retail price, verkaufspreis, vk, vk preis, prix de vente, precio de venta, ' +
      'prezzo di vendita, verkoopprijs, cena sprzedazy',
  ),
  arrivedOn: words(
    'arrived, arrived on, arrival date, received on, eingang, eingangsdatum, date arrivee, fecha de llegada, ' +
      'data di arrivo, aankomstdatum',
  ),
  expectedOn: words(
    'expected, expected on, eta, due, delivery date, liefertermin, lieferdatum, date de livraison, fecha de entrega, ' +
      'data di consegna, leverdatum',
  ),
  location: words(
    'location, lot location, where, row, standort, stellplatz, platz, emplacement, lieu, ubicacion, posizione, locatie, ' +
      'miejsce',
  ),
  keyTag: words('key tag, key number, key no, schlusselnummer, schlusselanhanger, numero de llave, sleutelnummer'),
  keysReceived: words(
    'keys, number of keys, key count, schlussel, anzahl schlussel, cles, nombre de cles, llaves, chiavi, sleutels, ' +
      'klucze',
  ),
};
