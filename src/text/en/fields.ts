export const fields = {
  u: '± u',
} as const;
