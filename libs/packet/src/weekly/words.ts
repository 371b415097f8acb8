type Told = { readonly [name: string]: string | number };

/** The report's own words; names of stations and defects come with it, in both languages. */
export const WEEKLY_WORDS = {
  en: {
    title: (plant: string, to: string) => `${plant}: quality to ${to}`,
    span: (from: string, to: string) => `Weeks from ${from} to ${to}.`,
    answer: ({ clean, left, low, high }: Told) =>
      `${clean} of ${left} sections left right the first time (95 % interval ${low} to ${high}).`,
    nothing: 'Nothing left this station in the span.',
    more: ({ escapes, complete, left }: Told) =>
      `With what was found later: ${escapes} of ${left}. Left with nothing open: ${complete} of ${left}.`,
    steady: 'No alarm in this span.',
    alarm: ({ day, since, before, after }: Told) =>
      `Alarm of ${day}: worse since about ${since}. Before: ${before} with a nonconformance; since: ${after}. Look first at what was new that day.`,
    known: (by: string, note: string) => `Cause recorded by ${by}: ${note}`,
    open: 'No cause recorded yet.',
    chart: 'Sections with a nonconformance, week by week (up is worse)',
    kinds: {
      p: 'p chart: blue line center, dashes three-sigma limits, thin bars 95 % intervals, triangles what stands out.',
      'p-prime':
        'Laney p′ chart: blue line center, dashes three-sigma limits as wide as the weeks really vary, thin bars 95 % intervals, triangles what stands out.',
    },
    week: 'Week of',
    nonconforming: 'With a nonconformance',
    limits: 'Limits',
    signal: 'Signal',
    beyond: 'beyond the limits',
    of: 'of',
    defects: 'Defects charged here, the worst first',
    defect: 'Defect',
    count: 'Count',
    share: 'Share',
    found: 'Where they were found',
    field: 'In the field',
    elsewhere: 'Other places',
    earlier: (count: number) => `Earlier alarms in this span: ${count}; the station’s screen has them.`,
    later: 'Days later (median)',
    notes: 'Notes',
    rolled: (rolled: string) => `Through all stations (rolled throughput yield): ${rolled}.`,
    budget: (budget: number, charts: number) =>
      `All ${charts} charts together may give ${budget} false alarms a month; each chart’s limit follows from that.`,
    foot: (plant: string, page: number, of: number, position: number) =>
      `${plant} · ledger position ${position} · page ${page} of ${of}`,
  },
  es: {
    title: (plant: string, to: string) => `${plant}: calidad al ${to}`,
    span: (from: string, to: string) => `Semanas del ${from} al ${to}.`,
    answer: ({ clean, left, low, high }: Told) =>
      `${clean} de ${left} secciones salieron bien a la primera (intervalo del 95 %: ${low} a ${high}).`,
    nothing: 'Nada salió de esta estación en el periodo.',
    more: ({ escapes, complete, left }: Told) =>
      `Con lo hallado después: ${escapes} de ${left}. Salieron sin nada pendiente: ${complete} de ${left}.`,
    steady: 'Ninguna alarma en este periodo.',
    alarm: ({ day, since, before, after }: Told) =>
      `Alarma del ${day}: peor desde cerca del ${since}. Antes: ${before} con una no conformidad; desde entonces: ${after}. Mire primero qué hubo de nuevo ese día.`,
    known: (by: string, note: string) => `Causa registrada por ${by}: ${note}`,
    open: 'Aún sin causa registrada.',
    chart: 'Secciones con una no conformidad, por semana (arriba es peor)',
    kinds: {
      p: 'Gráfica p: línea azul centro, rayas límites de tres sigma, barras finas intervalos del 95 %, triángulos lo que destaca.',
      'p-prime':
        'Gráfica p′ de Laney: línea azul centro, rayas límites de tres sigma tan anchos como varían las semanas, barras finas intervalos del 95 %, triángulos lo que destaca.',
    },
    week: 'Semana del',
    nonconforming: 'Con una no conformidad',
    limits: 'Límites',
    signal: 'Señal',
    beyond: 'fuera de los límites',
    of: 'de',
    defects: 'Defectos a cargo de esta estación, primero lo peor',
    defect: 'Defecto',
    count: 'Cantidad',
    share: 'Parte',
    found: 'Dónde se hallaron',
    field: 'En el campo',
    elsewhere: 'Otros lugares',
    earlier: (count: number) =>
      `Alarmas anteriores en este periodo: ${count}; están en la pantalla de la estación.`,
    later: 'Días después (mediana)',
    notes: 'Notas',
    rolled: (rolled: string) => `Por todas las estaciones (rendimiento acumulado): ${rolled}.`,
    budget: (budget: number, charts: number) =>
      `Las ${charts} gráficas juntas pueden dar ${budget} falsas alarmas al mes; de ahí sale el límite de cada una.`,
    foot: (plant: string, page: number, of: number, position: number) =>
      `${plant} · posición ${position} del libro · página ${page} de ${of}`,
  },
} as const;

export type WeeklyLanguage = keyof typeof WEEKLY_WORDS;
export type WeeklyWords = (typeof WEEKLY_WORDS)[WeeklyLanguage];
