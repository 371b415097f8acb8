import type { Words } from '@libs/judge';

/**
 * What is to be mended in a rulebook's files, in Spanish. The sentences are those of libs/rulebook; `{}` is what stands
 * between backticks or quotes there, taken over as it is. The longest of those that begin alike stands first.
 */
export const PROBLEMS: readonly (readonly [string, string])[] = [
  ['is missing: a rulebook begins with it', 'falta: un reglamento empieza por él'],
  ['is missing: a rulebook lists its operations', 'falta: un reglamento enumera sus operaciones'],
  ['is missing: this line is a text', 'falta: esta línea es un texto'],
  ['is missing from the design', 'falta en el diseño'],
  ['is missing', 'falta'],
  ['is no file of a rulebook', 'no es un archivo de un reglamento'],
  ['column is missing', 'falta la columna'],
  ['column stands here twice', 'la columna está dos veces'],
  ['is no column here and no design attribute', 'no es columna de esta tabla ni atributo del diseño'],
  ['is no column here', 'no es columna de esta tabla'],
  ['has {} cells where the header has {}', 'tiene {} celdas y el encabezado {}'],
  ['has no values: only a number needs none', 'no tiene valores: solo un número puede no tenerlos'],
  ['has no field {}', 'no tiene ningún campo {}'],
  ['has too many conditions to be checked', 'tiene demasiadas condiciones para comprobarlo'],
  ['is none of {}', 'no es ninguno de {}'],
  ['is empty: the line has nothing to say', 'está vacío: la línea no dice nada'],
  [
    'is empty, and so is at_most: the row says nothing',
    'está vacío, y at_most también: la fila no dice nada',
  ],
  ['is empty', 'está vacío'],
  [
    'is no id: some characters, single spaces between them only',
    'no es un identificador: caracteres, con un solo espacio entre ellos',
  ],
  ['is neither crew:ID nor role:NAME', 'no es crew:ID ni role:NAME'],
  ['is no whole number above 0', 'no es un número entero mayor que 0'],
  ['is no YAML: {}', 'no es YAML (dice el lector, en inglés): {}'],
  ['is no CSV: {}', 'no es CSV (dice el lector, en inglés): {}'],
  [
    '"*{}" points at nothing: put quotes around it where the star is meant as it is',
    '"*{}" no apunta a nada: póngalo entre comillas si el asterisco va tal cual',
  ],
  [
    '`{}` is not a comparison (>= 7), an interval ([10..14]), a list ("I","II"), not(...), a number, a day (date("2026-05-01")), "text", true, false or -',
    '`{}` no es una comparación (>= 7), un intervalo ([10..14]), una lista ("I","II"), not(...), un número, un día (date("2026-05-01")), "texto", true, false ni -',
  ],
  ['`{}` is an interval with nothing in it', '`{}` es un intervalo vacío'],
  [
    '`{}` is no linear relation such as `3 * hole <= depth`',
    '`{}` no es una relación lineal como `3 * hole <= depth`',
  ],
  ['`{}` is no attribute of the design', '`{}` no es un atributo del diseño'],
  ['`{}` is no characteristic of `{}`', '`{}` no es una característica de `{}`'],
  ['`{}` is no unit of a plant', '`{}` no es una unidad de la planta'],
  ['`{}` is no unit of time', '`{}` no es una unidad de tiempo'],
  ['`{}` is no length of time', '`{}` no es una duración'],
  ['`{}` is no number', '`{}` no es un número'],
  ['`{}` is no day: write its values in quotes', '`{}` no es un día: escriba sus valores entre comillas'],
  [
    '`{}` is neither true nor false: write its values in quotes',
    '`{}` no es verdadero ni falso: escriba sus valores entre comillas',
  ],
  [
    '`{}` is not a number: write its values in quotes',
    '`{}` no es un número: escriba sus valores entre comillas',
  ],
  ['`{}` is no {} of this rulebook', '`{}` no está en este reglamento ({})'],
  ['`{}` stands here twice', '`{}` está dos veces'],
  ['`{}` cannot need itself', '`{}` no puede necesitarse a sí misma'],
  ['`{}` cannot hide itself', '`{}` no puede cubrirse a sí misma'],
  ['`{}` cannot come after itself', '`{}` no puede venir después de sí misma'],
  ['`{}` is not among hard', '`{}` no está en hard'],
  ['`{}` is not of the form id:a, id:b or id:c', '`{}` no tiene la forma id:a, id:b o id:c'],
  ['"{}" is text, and a {} is a number', '"{}" es texto, y {} es un número'],
  ['"{}" is text, and `{}` is a number', '"{}" es texto, y `{}` es un número'],
  ['"{}" is no answer to a yes/no: "yes" or "no"', '"{}" no contesta un sí o no: "yes" o "no"'],
  ['"{}" is no value of `{}`', '"{}" no es un valor de `{}`'],
  ['"{}" is none of its values: {}', '"{}" no es ninguno de sus valores: {}'],
  ['"{}" is no number', '"{}" no es un número'],
  [
    'is no attribute or detail of the design in this rulebook',
    'no es atributo ni detalle del diseño en este reglamento',
  ],
  ['is not given, and row {} of values.csv requires it', 'no se da, y la fila {} de values.csv lo requiere'],
  ['is not marked `rising` in plant.yaml', 'no está marcado `rising` en plant.yaml'],
  ['is less than at_least, {}', 'es menos que at_least, {}'],
  [
    'is a third operation: neither the cover nor what it hides',
    'es una tercera operación: ni la que cubre ni la cubierta',
  ],
  ['is given by the design already: leave it at -', 'ya lo da el diseño: déjelo en -'],
  ['is {}, not {}', 'es {}, no {}'],
  ['belongs to rows of kind derived only', 'es solo de filas de tipo derived'],
  ['belong to rows of kind choice only', 'son solo de filas de tipo choice'],
  ['belongs to rows hidden `second` only', 'es solo de filas con hidden `second`'],
  ['goes with `from` lot, and only with it', 'va con `from` lot, y solo con él'],
  ['a derived row requires its relation', 'una fila derived requiere su relación'],
  [
    'are read by whoever signs: neither filled in nor derived',
    'los lee quien firma: ni se rellenan ni se derivan',
  ],
  ['a measure needs its unit', 'una medida necesita su unidad'],
  ['a {} has none', '{} no tiene unidad'],
  ['names no characteristic', 'no nombra ninguna característica'],
  ['needs itself: {}', 'se necesita a sí misma: {}'],
  [
    'may need itself, and has too many conditions to be checked: {}',
    'puede necesitarse a sí misma, y tiene demasiadas condiciones para comprobarlo: {}',
  ],
  [
    'can never apply: an earlier variant always goes before, or no design meets it',
    'nunca puede aplicarse: siempre gana una variante anterior, o ningún diseño la cumple',
  ],
  [
    'can never apply: no design meets all its conditions',
    'nunca puede aplicarse: ningún diseño cumple todas sus condiciones',
  ],
  ['`{}` needs no approval in its own place', '`{}` no necesita aprobación en su propio lugar'],
  ['a {} is no day', '{} no es un día'],
  ['a {} is not compared as a number', '{} no se compara como número'],
  [
    'can never apply: its conditions and those of its operations exclude each other, or more specific rows always do',
    'nunca puede aplicarse: sus condiciones y las de sus operaciones se excluyen, o siempre ganan filas más específicas',
  ],
  [
    'disagrees with row {}, as specific, for every design',
    'contradice la fila {}, igual de específica, en todo diseño',
  ],
  ['disagrees with row {}, as specific, where {}', 'contradice la fila {}, igual de específica, donde {}'],
];

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
const FORMS = PROBLEMS.map(([english, spanish]) => ({
  form: new RegExp(`^${english.split('{}').map(escaped).join('([\\s\\S]+?)')}$`),
  spanish,
}));

/** One complaint in both languages; one that nobody has put into Spanish yet stands as it is. */
export const problemSays = (says: string): Words => {
  for (const { form, spanish } of FORMS) {
    const blanks = form.exec(says)?.slice(1);
    if (blanks === undefined) continue;
    const parts = spanish.split('{}');
    return {
      en: says,
      es: parts.map((part, at) => part + (at < parts.length - 1 ? (blanks[at] ?? '') : '')).join(''),
    };
  }
  return { en: says, es: says };
};
