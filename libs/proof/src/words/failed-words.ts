import type { FailedCode } from '../verifying/outcome';
import type { Words } from './words';

/** What is wrong, and where. `{...}` stand for where it is and what was found. */
export const FAILED_WORDS: Readonly<Record<FailedCode, Words>> = {
  'packet-unreadable': {
    en: 'No file can be read from these {bytes} bytes: they are no packet, or its beginning is destroyed.',
    es: 'No se puede leer ningún archivo de estos {bytes} bytes: no son un paquete, o su comienzo está destruido.',
  },
  'container-altered': {
    en: 'The ZIP around the files is not as the plant packs it: it differs from byte {at} on, of {bytes}.',
    es: 'El ZIP que envuelve los archivos no es como lo empaca la planta: difiere desde el byte {at}, de {bytes}.',
  },
  'manifest-unreadable': {
    en: 'The list in {file} cannot be read: it was changed or cut short.',
    es: 'La lista en {file} no se puede leer: fue cambiada o cortada.',
  },
  'file-missing': { en: 'File {file} is missing.', es: 'Falta el archivo {file}.' },
  'file-unlisted': {
    en: 'File {file} is in no list: it was added.',
    es: 'El archivo {file} no está en ninguna lista: fue agregado.',
  },
  'photo-other': {
    en: 'Photo {file} is not the picture it is named after.',
    es: 'La foto {file} no es la imagen cuyo nombre lleva.',
  },
  'photo-unnamed': {
    en: 'Photo {file} is named by no event of this packet.',
    es: 'Ningún evento de este paquete nombra la foto {file}.',
  },
  'file-altered': {
    en: 'File {file} was changed: its hash is not the one listed or signed for.',
    es: 'El archivo {file} fue cambiado: su huella no es la listada o firmada.',
  },
  'file-cut-short': {
    en: 'File {file} was cut short: {found} of {expected} bytes are left.',
    es: 'El archivo {file} fue cortado: quedan {found} de {expected} bytes.',
  },
  'file-lengthened': {
    en: 'File {file} was lengthened: {found} bytes instead of {expected}.',
    es: 'El archivo {file} fue alargado: {found} bytes en vez de {expected}.',
  },
  'line-unreadable': {
    en: 'Line {line} of {file} cannot be read: it was changed or cut short.',
    es: 'La línea {line} de {file} no se puede leer: fue cambiada o cortada.',
  },
  'evidence-other': {
    en: 'The evidence is not the one the packet was made with: the list {file} has another hash.',
    es: 'Las pruebas no son aquellas con las que se hizo el paquete: la lista {file} tiene otra huella.',
  },
  'seal-wrong': {
    en: 'The signature under the list of files, {file}, is not the plant’s or was changed.',
    es: 'La firma bajo la lista de archivos, {file}, no es de la planta o fue cambiada.',
  },
  'key-unreadable': {
    en: 'The public key in {file} cannot be read: it was changed.',
    es: 'La clave pública en {file} no se puede leer: fue cambiada.',
  },
  'key-foreign': {
    en: 'A foreign key: {key} is not the key {signedBy}.',
    es: 'Una clave ajena: {key} no es la clave {signedBy}.',
  },
  'key-change-wrong': {
    en: 'The change of keys in line {line} of {file} is not signed by both keys.',
    es: 'El cambio de claves en la línea {line} de {file} no está firmado por ambas claves.',
  },
  'checkpoint-unreadable': {
    en: 'The checkpoint in {file} cannot be read: it was changed or cut short.',
    es: 'El punto de control en {file} no se puede leer: fue cambiado o cortado.',
  },
  'checkpoint-other': {
    en: 'The checkpoint is of {ledger} at {size} events; the evidence is of {expected} at {position}.',
    es: 'El punto de control es de {ledger} con {size} eventos; las pruebas son de {expected} con {position}.',
  },
  'signature-wrong': {
    en: 'The signature under the checkpoint in {file} is wrong: the checkpoint or the signature was changed.',
    es: 'La firma bajo el punto de control en {file} es falsa: el punto de control o la firma fue cambiada.',
  },
  'event-altered': {
    en: 'Event {version} of {stream} (event {position} of the ledger) was changed: line {line} of {file}.',
    es: 'El evento {version} de {stream} (evento {position} del registro) fue cambiado: línea {line} de {file}.',
  },
  'event-dropped': {
    en: 'Event {version} of {stream} (event {position} of the ledger) is missing: it was taken out.',
    es: 'Falta el evento {version} de {stream} (evento {position} del registro): fue quitado.',
  },
  'event-added': {
    en: 'Line {line} of {file} is no event of the ledger: it was added (it says it is event {version} of {stream}).',
    es: 'La línea {line} de {file} no es un evento del registro: fue agregada (dice ser el evento {version} de {stream}).',
  },
  'event-repeated': {
    en: 'Event {version} of {stream} stands twice: again in line {line} of {file}.',
    es: 'El evento {version} de {stream} está dos veces: otra vez en la línea {line} de {file}.',
  },
  'event-swapped': {
    en: 'In the place of event {version} of {stream} stands another: {found}, in line {line} of {file}.',
    es: 'En lugar del evento {version} de {stream} hay otro: {found}, en la línea {line} de {file}.',
  },
  'event-out-of-order': {
    en: 'Event {version} of {stream} (event {position} of the ledger) stands out of order: line {line} of {file}.',
    es: 'El evento {version} de {stream} (evento {position} del registro) está fuera de orden: línea {line} de {file}.',
  },
  'event-foreign': {
    en: 'Event {version} of {stream} has no business in this packet: line {line} of {file}.',
    es: 'El evento {version} de {stream} no pertenece a este paquete: línea {line} de {file}.',
  },
  'proof-missing': {
    en: 'There is no proof for event {version} of {stream}.',
    es: 'No hay prueba para el evento {version} de {stream}.',
  },
  'proof-wrong': {
    en: 'The proof for event {version} of {stream}, line {line} of {file}, does not lead to the signed root: it was changed.',
    es: 'La prueba del evento {version} de {stream}, línea {line} de {file}, no lleva a la raíz firmada: fue cambiada.',
  },
  'head-missing': {
    en: 'It cannot be shown that {stream} is complete: its last event is not in {file}.',
    es: 'No se puede mostrar que {stream} está completo: su último evento no está en {file}.',
  },
  'head-wrong': {
    en: 'It cannot be shown that {stream} is complete: what {file} says of its last event is not what was signed.',
    es: 'No se puede mostrar que {stream} está completo: lo que {file} dice de su último evento no es lo firmado.',
  },
  'stream-missing': {
    en: 'All of {stream} is missing, which the home’s own events name.',
    es: 'Falta todo {stream}, que los propios eventos de la casa nombran.',
  },
  'count-wrong': {
    en: 'There are {found} events here; {file} says {expected}.',
    es: 'Hay {found} eventos; {file} dice {expected}.',
  },
  'held-unreadable': {
    en: 'What you gave to compare with cannot be read as a {what}.',
    es: 'Lo que usted dio para comparar no se puede leer ({what}).',
  },
  'held-of-another-ledger': {
    en: 'The checkpoint you hold is of another ledger: {held}, not {packet}.',
    es: 'El punto de control que usted tiene es de otro registro: {held}, no {packet}.',
  },
  'held-later': {
    en: 'The checkpoint you hold, of {held} events, is later than this packet of {packet}: compare a later packet with it.',
    es: 'El punto de control que usted tiene, de {held} eventos, es posterior a este paquete de {packet}: compare con él un paquete posterior.',
  },
  'held-unbridged': {
    en: 'Nothing in the packet leads from the checkpoint you hold, of {held} events, to this one of {packet}: ask the plant for `studbook checkpoint --since` of it.',
    es: 'Nada en el paquete lleva del punto de control que usted tiene, de {held} eventos, a este de {packet}: pida a la planta `studbook checkpoint --since` de él.',
  },
  'row-altered': {
    en: 'Event {position} of the ledger (event {version} of {stream}) was changed after it was recorded.',
    es: 'El evento {position} del registro (evento {version} de {stream}) fue cambiado después de registrarse.',
  },
  'row-misplaced': {
    en: 'At position {position} of the ledger stands another event: {found}.',
    es: 'En la posición {position} del registro está otro evento: {found}.',
  },
  'row-added': {
    en: 'Event {position} (event {version} of {stream}) was put there past the ledger’s writer.',
    es: 'El evento {position} (evento {version} de {stream}) fue puesto allí sin pasar por el registro.',
  },
  'row-missing': {
    en: 'Event {position} of the ledger is missing: it was taken out.',
    es: 'Falta el evento {position} del registro: fue quitado.',
  },
  'row-foreign': {
    en: 'Event {position} comes from another ledger: {found}.',
    es: 'El evento {position} viene de otro registro: {found}.',
  },
  'version-missing': {
    en: 'Event {version} of {stream} is missing.',
    es: 'Falta el evento {version} de {stream}.',
  },
  'tile-altered': {
    en: 'Tile {level}/{number} of the hash tree was changed: it is not what its own hashes give.',
    es: 'La pieza {level}/{number} del árbol de huellas fue cambiada: no es lo que dan sus propias huellas.',
  },
  'tile-contradicts': {
    en: 'Tile {level}/{number} of the hash tree is not what these events give: it or events {from} to {to} were changed.',
    es: 'La pieza {level}/{number} del árbol de huellas no es lo que dan estos eventos: ella o los eventos {from} a {to} fueron cambiados.',
  },
  'checkpoint-altered': {
    en: 'The checkpoint of {size} events in the database is not signed by the plant: it was changed or put there.',
    es: 'El punto de control de {size} eventos en la base de datos no está firmado por la planta: fue cambiado o puesto allí.',
  },
  'checkpoint-contradicted': {
    en: 'The first {size} events are not those that the checkpoint of {size} events was signed for: what was changed lies after event {after}.',
    es: 'Los primeros {size} eventos no son aquellos por los que se firmó el punto de control de {size} eventos: lo cambiado está después del evento {after}.',
  },
  'checkpoint-beyond': {
    en: 'A checkpoint was signed for {size} events; {head} are left. The last ones were taken out.',
    es: 'Se firmó un punto de control de {size} eventos; quedan {head}. Los últimos fueron quitados.',
  },
  'more-failures': {
    en: 'And {more} more.',
    es: 'Y {more} más.',
  },
  'held-contradicted': {
    en: 'This ledger contradicts the checkpoint you hold: its first {held} events are not those that were signed then. It was rewritten.',
    es: 'Este registro contradice el punto de control que usted tiene: sus primeros {held} eventos no son los que se firmaron entonces. Fue reescrito.',
  },
};
