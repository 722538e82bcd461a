// The colour of the window before the page has drawn: the page's own paper, light and dark. A test holds it against the tokens.

export function backgroundOf(isDark: boolean): '#16191b' | '#fbfaf6' {
  return isDark ? '#16191b' : '#fbfaf6';
}
