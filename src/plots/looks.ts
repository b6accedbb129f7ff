/** Lines that differ in dash as well as in colour. */
export type LookName = 'solid' | 'dashes' | 'dots' | 'dotDash';
