/** Written into every result; a test holds it equal to package.json. */
export const SOFTWARE_VERSION = '0.1.0';
