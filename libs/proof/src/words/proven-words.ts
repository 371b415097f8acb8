import type { OpenCode, ProvenCode } from '../verifying/outcome';
import type { Words } from './words';

/** What was proven, in the reader's language. `{...}` stand for where it is and what was found. */
export const PROVEN_WORDS: Readonly<Record<ProvenCode, Words>> = {
  'evidence-whole': {
    en: 'All {files} evidence files are here, each with the hash the evidence list gives.',
    es: 'Están los {files} archivos de prueba, cada uno con la huella que da la lista de pruebas.',
  },
  'packet-whole': {
    en: 'All {files} files of the packet are here and unchanged, the readable ones too.',
    es: 'Están los {files} archivos del paquete sin cambios, también los legibles.',
  },
  'packet-signed': {
    en: 'The list of all files is signed by the plant.',
    es: 'La lista de todos los archivos está firmada por la planta.',
  },
  'checkpoint-signed': {
    en: 'The checkpoint is signed with key {key}: the ledger {ledger} had {size} events, the last one recorded at {until}.',
    es: 'El punto de control está firmado con la clave {key}: el registro {ledger} tenía {size} eventos, el último registrado en {until}.',
  },
  'events-included': {
    en: 'Each of the {events} events here is, bit for bit, in the ledger of {size} events that was signed.',
    es: 'Cada uno de los {events} eventos está, bit por bit, en el registro de {size} eventos que se firmó.',
  },
  'stream-complete': {
    en: '{stream}: all of its events up to the checkpoint are here ({events}), none is missing.',
    es: '{stream}: están todos sus eventos hasta el punto de control ({events}), no falta ninguno.',
  },
  'used-complete': {
    en: 'Lots, instruments and people that its events speak of ({streams}): all of their events up to then are here ({events}).',
    es: 'Lotes, instrumentos y personas de los que hablan sus eventos ({streams}): están todos sus eventos hasta entonces ({events}).',
  },
  'ledger-gapless': {
    en: 'All {events} events stand in the database with the hashes they were recorded with, from 1 without a gap, and so does each of {streams} streams.',
    es: 'Los {events} eventos están en la base de datos con las huellas con que se registraron, desde el 1 sin huecos, y lo mismo cada una de {streams} series.',
  },
  'tiles-agree': {
    en: 'The hash tree kept beside them, {tiles} tiles, is the one these events give.',
    es: 'El árbol de huellas guardado junto a ellos, {tiles} piezas, es el que dan estos eventos.',
  },
  'checkpoints-agree': {
    en: 'Every checkpoint that was signed, {checkpoints} of them, the last at {size} events, is what these events give.',
    es: 'Cada punto de control firmado, {checkpoints} en total, el último con {size} eventos, es lo que dan estos eventos.',
  },
  'home-complete': {
    en: 'Every section that home {home} says it has is here ({sections}).',
    es: 'Está cada sección que la casa {home} dice tener ({sections}).',
  },
  'photos-named': {
    en: 'Each of the {photos} photos here is, bit for bit, one that these events name.',
    es: 'Cada una de las {photos} fotos es, bit por bit, una que estos eventos nombran.',
  },
  'key-known': {
    en: 'The signing key is the one you hold, {key}, or took over from it with both keys’ signatures.',
    es: 'La clave que firma es la que usted tiene, {key}, o la relevó con la firma de ambas.',
  },
  'checkpoint-extends': {
    en: 'The checkpoint you hold, of {held} events, is the beginning of this ledger of {packet} events: it only grew since, and nothing in it was changed.',
    es: 'El punto de control que usted tiene, de {held} eventos, es el comienzo de este registro de {packet} eventos: desde entonces solo creció y nada en él cambió.',
  },
};

export const OPEN_WORDS: Readonly<Record<OpenCode, Words>> = {
  'key-unconfirmed': {
    en: 'That key {key} is the plant’s: compare it with one you got another way, such as from a printed checkpoint, or give an earlier checkpoint.',
    es: 'Que la clave {key} es de la planta: compárela con una que obtuvo por otra vía, por ejemplo de un punto de control impreso, o dé un punto de control anterior.',
  },
  'later-unknown': {
    en: 'What was recorded after event {position} of the ledger: a later packet shows it.',
    es: 'Lo que se registró después del evento {position} del registro: lo muestra un paquete posterior.',
  },
  'truth-not-shown': {
    en: 'That what was recorded is so of the house: only that it was recorded, and has not been changed.',
    es: 'Que lo registrado sea así en la casa: solo que se registró y que no ha cambiado.',
  },
  'checkpoint-none': {
    en: 'Whether somebody rewrote all of it before today: no checkpoint was ever signed. Run `studbook checkpoint` and send it out of the plant.',
    es: 'Si alguien lo reescribió todo antes de hoy: nunca se firmó un punto de control. Ejecute `studbook checkpoint` y envíelo fuera de la planta.',
  },
  'checkpoint-kept-elsewhere': {
    en: 'Whether somebody with the signing key rewrote all of it: compare with a checkpoint that is kept outside the plant (`studbook verify PACKET --checkpoint`).',
    es: 'Si alguien con la clave de firma lo reescribió todo: compare con un punto de control guardado fuera de la planta (`studbook verify PAQUETE --checkpoint`).',
  },
  'beyond-checkpoint': {
    en: 'Events after {size}: no checkpoint covers them yet.',
    es: 'Los eventos después del {size}: ningún punto de control los cubre todavía.',
  },
  'photos-elsewhere': {
    en: 'What is on {photos} photos that these events name: the plant had only their fingerprints when it made this packet.',
    es: 'Qué muestran {photos} fotos que estos eventos nombran: la planta solo tenía sus huellas cuando hizo este paquete.',
  },
  'packet-unsealed': {
    en: 'Files beside the evidence: there are none here, or none that the plant signed for.',
    es: 'Archivos junto a las pruebas: aquí no los hay, o ninguno firmado por la planta.',
  },
};
