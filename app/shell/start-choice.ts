// What a person can do when the fleet could not be opened, in the order of the buttons.

export const startChoices = ['try-again', 'choose-another', 'quit'] as const;
export type StartChoice = (typeof startChoices)[number];
