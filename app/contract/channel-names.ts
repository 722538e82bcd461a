// The names of the channels as plain data for the preload, which carries no schemas. A test proves that they equal the contract's.

export const channelNames = [
  'desk:read',
  'desk:set-person',
  'desk:set-theme',
  'lot:read',
  'vehicle:open',
  'vehicle:take-in',
  'vehicle:change',
  'vehicle:what-if',
  'vehicle:withdraw',
  'cases:find',
  'edit:undo',
  'edit:redo',
  'money:read',
  'money:export',
  'money:show-folder',
  'shop:read',
  'shop:change',
  'sheet:preview',
  'sheet:print',
  'sheet:open',
  'sheet:show-folder',
  'fleet:choose',
  'fleet:restore-trouble',
  'fleet:settle-trouble',
  'fleet:take-over',
  'fleet:back-up',
] as const;

export const eventNames = [
  'lot:row-changed',
  'lot:forecasts',
  'lot:all-changed',
  'desk:changed',
  'menu:chosen',
] as const;
