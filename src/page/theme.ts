/** Colours of the page by day and by night. */

/** Letters of each keep a contrast of 4.5 to 1 on its paper, its cards and its warned ground (WCAG 2.2, 1.4.3). */
export const themes = {
  light:
    '--ink: #1c2430; --paper: #ffffff; --quiet: #55606e; --accent: #0072b2; --rule: #d5dae0; --card: #f5f7f9; --warning: #9a3d00; --warned: #fdf4ee; --good: #00664a; --error: #a32f0c; --open: #7a5200;',
  dark: '--ink: #e8ebef; --paper: #14181d; --quiet: #a5afba; --accent: #56b4e9; --rule: #39424c; --card: #1e242b; --warning: #f0a830; --warned: #2a2116; --good: #4fd0a0; --error: #ff9a75; --open: #f0b849;',
}
