// The guess of what each column means.
import { describe, expect, it } from 'vitest';
import { guessColumns, headerKey } from '../../../app/domain/import/list-columns.ts';

describe('the guess of the columns', () => {
  it.each([
    [
      [
        'Stock #',
        'VIN',
        'Year',
        'Make',
        'Model',
        'Color',
        'Mileage',
        'Purchase Date',
        'Price',
        'Buyer Fee',
        'Transport',
      ],
      [
        'stockNumber',
        'vin',
        'modelYear',
        'make',
        'model',
        'colour',
        'odometer',
        'boughtOn',
        'price',
        'fees',
        'transport',
      ],
    ],
    [
      [
        'Fahrgestellnummer',
        'Marke',
        'Modell',
        'Baujahr',
        'Farbe',
        'km-Stand',
        'Kaufdatum',
        'EK-Preis (EUR)',
        'Gebühren',
        'Verkäufer',
      ],
      ['vin', 'make', 'model', 'modelYear', 'colour', 'odometer', 'boughtOn', 'price', 'fees', 'source'],
    ],
    [
      [
        'Numéro de châssis',
        'Marque',
        'Modèle',
        'Année',
        'Couleur',
        'Kilométrage',
        "Date d'achat",
        "Prix d'achat",
        'Frais',
        'Vendeur',
      ],
      ['vin', 'make', 'model', 'modelYear', 'colour', 'odometer', 'boughtOn', 'price', 'fees', 'source'],
    ],
    [
      ['Bastidor', 'Marca', 'Modelo', 'Año', 'Kilometraje', 'Fecha de compra', 'Precio', 'Proveedor'],
      ['vin', 'make', 'model', 'modelYear', 'odometer', 'boughtOn', 'price', 'source'],
    ],
    [
      ['Numer VIN', 'Marka', 'Model', 'Rok produkcji', 'Przebieg', 'Data zakupu', 'Cena zakupu', 'Sprzedawca'],
      ['vin', 'make', 'model', 'modelYear', 'odometer', 'boughtOn', 'price', 'source'],
    ],
  ])('knows %j', (headers, facts) => {
    expect(guessColumns(headers)).toEqual(facts);
  });

  it('gives no fact twice, and leaves alone what says nothing', () => {
    expect(guessColumns(['Price', 'Asking price', 'Lane', 'Price', ''])).toEqual(['price', 'asking', null, null, null]);
  });

  it('goes by what was chosen for the same head line before', () => {
    expect(guessColumns(['VIN', 'Lane'], [null, 'location'])).toEqual([null, 'location']);
    expect(headerKey(['VIN ', 'Lané'])).toBe(headerKey(['vin', 'LANE']));
  });
});
