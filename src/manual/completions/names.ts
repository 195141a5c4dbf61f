/** The shells that there are completions for. */
export const shellNames = ['bash', 'zsh', 'fish'] as const
export type Shell = (typeof shellNames)[number]
