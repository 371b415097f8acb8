/** Of what the environment says, told in words to whoever starts the server. */
export class SettingsWrong extends Error {}
