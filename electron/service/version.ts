/** Version of the program; a test holds it against package.json. */
export const APP_VERSION = '0.1.0';
