// Invented customers and their vehicles.
import type { ModelName } from './vehicle-models.ts';

export type DemoVehicle = {
  readonly model: ModelName;
  readonly plate: string;
  readonly year: number;
  readonly colour: string;
  readonly notes?: string;
};
export type DemoCustomer = {
  readonly name: string;
  readonly phone: string;
  readonly email: string;
  readonly address?: string;
  readonly notes?: string;
  readonly vehicles: readonly DemoVehicle[];
};

export const CUSTOMERS: readonly DemoCustomer[] = [
  {
    name: 'Elin Sandvik',
    phone: '555 0111',
    email: 'elin.sandvik@post.example',
    address: '4 Weir Terrace',
    notes: 'Teacher: mornings only during term.',
    vehicles: [{ model: 'corrie', plate: 'QR 418 E', year: 2020, colour: 'Slate blue' }],
  },
  {
    name: 'Hamish Rowe',
    phone: '555 0112',
    email: 'hamish@rowe-pottery.example',
    address: 'Rowe Pottery, Kiln Yard 2',
    notes: 'Lets us show his car. Medlar lends the drivers for it.',
    vehicles: [{ model: 'tarn', plate: 'KY 77 HR', year: 2022, colour: 'Clay red' }],
  },
  {
    name: 'Greta Moll',
    phone: '555 0113',
    email: 'greta.moll@post.example',
    vehicles: [{ model: 'pipit', plate: 'GM 2014', year: 2014, colour: 'Silver' }],
  },
  {
    name: 'Adaeze Okafor',
    phone: '555 0114',
    email: 'adaeze@okafor-joinery.example',
    address: 'Okafor Joinery, Mill Lane 19',
    notes: 'Cuts her own boards; asks good questions about joints.',
    vehicles: [
      {
        model: 'drover',
        plate: 'OKF 19 J',
        year: 2021,
        colour: 'White',
        notes: 'Tool rack over the bed; child seat on the right, tether behind it.',
      },
      { model: 'packet', plate: 'OKF 20 J', year: 2019, colour: 'White' },
    ],
  },
  {
    name: 'Benedikt Harms',
    phone: '555 0115',
    email: 'b.harms@post.example',
    vehicles: [{ model: 'brisk', plate: 'BH 305 K', year: 2022, colour: 'Graphite' }],
  },
  {
    name: 'Carla Whitcombe',
    phone: '555 0116',
    email: 'carla.whitcombe@post.example',
    address: '31 Priory Walk',
    vehicles: [{ model: 'sable', plate: 'CW 88 PW', year: 2018, colour: 'Dark green' }],
  },
  {
    name: 'Farid Nazari',
    phone: '555 0117',
    email: 'farid@nazari-catering.example',
    notes: 'Weddings at weekends: never keep the car over a Friday.',
    vehicles: [{ model: 'tarn', plate: 'FN 21 CT', year: 2021, colour: 'Pearl' }],
  },
  {
    name: 'Dov Levran',
    phone: '555 0118',
    email: 'dov.levran@post.example',
    vehicles: [{ model: 'lark', plate: 'DL 9 EV', year: 2023, colour: 'Fog grey' }],
  },
  {
    name: 'Isla Penrose',
    phone: '555 0119',
    email: 'isla.penrose@post.example',
    vehicles: [{ model: 'brisk', plate: 'PNR 73 I', year: 2020, colour: 'Yellow' }],
  },
  {
    name: 'Kavita Rao',
    phone: '555 0120',
    email: 'kavita.rao@post.example',
    address: '8 Lock Cottages',
    notes: 'Rows: two sculls on the roof, oars inside, seat folded.',
    vehicles: [{ model: 'corrie', plate: 'KR 62 LC', year: 2018, colour: 'Black' }],
  },
  {
    name: 'Jiro Tanabe',
    phone: '555 0121',
    email: 'jiro@tanabe-piano.example',
    address: 'Tanabe Piano Tuning, Bell Court 5',
    notes: 'Tunes pianos. Hears everything.',
    vehicles: [{ model: 'packet', plate: 'JT 440 A', year: 2020, colour: 'Dark blue' }],
  },
  {
    name: 'Harbour Ferry Company',
    phone: '555 0122',
    email: 'crew@harbour-ferry.example',
    address: 'Pier 3, Harbour Road',
    notes: 'Invoice to the office, keys from the pier master.',
    vehicles: [{ model: 'drover', plate: 'HFC 12', year: 2023, colour: 'Orange' }],
  },
];
