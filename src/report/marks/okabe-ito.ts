/**
 * Colours that people with any kind of colour vision tell apart: M. Okabe & K. Ito, Color Universal Design (2008), fig.
 * 16, by their names there (values from memory).
 */
export const okabeIto = {
  black: '#000000',
  orange: '#e69f00',
  skyBlue: '#56b4e9',
  bluishGreen: '#009e73',
  yellow: '#f0e442',
  blue: '#0072b2',
  vermillion: '#d55e00',
  reddishPurple: '#cc79a7',
}
