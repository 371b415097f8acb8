import type { Design } from '@libs/judge';

/**
 * Figures typed from the texts, not from the rulebook's files: 24 CFR parts 3280 (as in early 2021) and 3285 and
 * NEC 300.4. One line each: section, what it says, design it is for, operation and characteristic, unit (UCUM),
 * values that meet it, values that do not (the next one a tape, a gauge or a count would show).
 */
export const PUBLISHED = `
  3280.6(a)             | serial characters at least 3/8 in high                     | -                             | serial-stamped character-height               | [in_i]           | 0.375                 | 0.3125
  3280.6(a)             | the serial stands in the foremost cross member             | -                             | serial-stamped place                          | -                | foremost cross member | hitch or drawbar
  3280.305(a)           | finish flooring under bearing walls at most 1/8 in         | -                             | walls-set finish-floor                        | [in_i]           | 0.125                 | 0.1875
  3280.305(c)(1)        | windows near a corner carry 48 psf in zone II              | wind=II                       | windows-set pressure-corner                   | [lbf_av]/[ft_i]2 | 48                    | 47
  3280.305(c)(1)        | windows elsewhere carry 38 psf in zone II                  | wind=II                       | windows-set pressure-elsewhere                | [lbf_av]/[ft_i]2 | 38                    | 37
  3280.305(c)(1)        | windows near a corner carry 58 psf in zone III             | wind=III                      | windows-set pressure-corner                   | [lbf_av]/[ft_i]2 | 58                    | 57
  3280.305(c)(1)        | windows elsewhere carry 46 psf in zone III                 | wind=III                      | windows-set pressure-elsewhere                | [lbf_av]/[ft_i]2 | 46                    | 45
  3280.305(c)(1) note 7 | roof nailing within 3 ft of a gable at 4 in                | wind=II sheathing_path=exempt | roof-decked gable-spacing                     | [in_i]           | 4                     | 4.0625
  3280.305(c)(1) note 7 | roof nailing elsewhere at 6 in                             | wind=II sheathing_path=exempt | roof-decked nail-spacing                      | [in_i]           | 6                     | 6.0625
  3280.305(c)(1) note 7 | roof panels at least 3/8 in                                | wind=II sheathing_path=exempt | roof-decked panel-thickness                   | [in_i]           | 0.375                 | 0.3125
  3280.305(c)(1) note 7 | wall sheathing fastened at 6 in                            | wind=II sheathing_path=exempt | sheathed fastener-spacing                     | [in_i]           | 6                     | 6.0625
  3280.305(c)(3)        | roof load at least 20 psf in the South zone                | roof_load=South               | plates-set roof-load                          | [lbf_av]/[ft_i]2 | 20                    | 19
  3280.305(c)(3)        | roof load at least 30 psf in the Middle zone               | roof_load=Middle              | plates-set roof-load                          | [lbf_av]/[ft_i]2 | 30                    | 29
  3280.305(c)(3)        | roof load at least 40 psf in the North zone                | roof_load=North               | plates-set roof-load                          | [lbf_av]/[ft_i]2 | 40                    | 39
  3280.305(c)(1)        | horizontal wind load at least 15 psf in zone I             | wind=I                        | plates-set wind-horizontal                    | [lbf_av]/[ft_i]2 | 15                    | 14
  3280.305(c)(1)        | uplift of the anchorage at least 9 psf in zone I           | wind=I                        | plates-set wind-uplift                        | [lbf_av]/[ft_i]2 | 9                     | 8
  3280.305(c)(1)        | horizontal wind load at least 39 psf in zone II            | wind=II                       | plates-set wind-horizontal                    | [lbf_av]/[ft_i]2 | 39                    | 38
  3280.305(c)(1)        | uplift of the anchorage at least 27 psf in zone II         | wind=II                       | plates-set wind-uplift                        | [lbf_av]/[ft_i]2 | 27                    | 26
  3280.305(c)(1)        | horizontal wind load at least 47 psf in zone III           | wind=III                      | plates-set wind-horizontal                    | [lbf_av]/[ft_i]2 | 47                    | 46
  3280.305(c)(1)        | uplift of the anchorage at least 32 psf in zone III        | wind=III                      | plates-set wind-uplift                        | [lbf_av]/[ft_i]2 | 32                    | 31
  3280.305(g)(1)        | floor live load at least 40 psf                            | -                             | plates-set floor-load                         | [lbf_av]/[ft_i]2 | 40                    | 39
  3280.506(a)           | Uo at most 0.116 in zone 1                                 | thermal=1                     | plates-set uo                                 | [uo_us]          | 0.116                 | 0.117
  3280.506(a)           | Uo at most 0.096 in zone 2                                 | thermal=2                     | plates-set uo                                 | [uo_us]          | 0.096                 | 0.097
  3280.506(a)           | Uo at most 0.079 in zone 3                                 | thermal=3                     | plates-set uo                                 | [uo_us]          | 0.079                 | 0.080
  3280.306(f)           | anchors carry 3150 lb                                      | -                             | site-set anchor-working                       | [lbf_av]         | 3150                  | 3149
  3280.306(f)           | anchors stand 4725 lb of overload                          | -                             | site-set anchor-overload                      | [lbf_av]         | 4725                  | 4724
  3280.305(e)(2)        | floor straps at most 24 in apart in zone II                | wind=II                       | floor-strapped strap-spacing                  | [in_i]           | 24                    | 24.0625
  3280.305(e)(2)        | floor straps at most 16 in apart in zone III               | wind=III                      | floor-strapped strap-spacing                  | [in_i]           | 16                    | 16.0625
  3280.305(e)(2)        | roof straps at most 24 in apart in zone II                 | wind=II                       | roof-strapped strap-spacing                   | [in_i]           | 24                    | 24.0625
  3280.305(e)(2)        | roof straps at most 16 in apart in zone III                | wind=III                      | roof-strapped strap-spacing                   | [in_i]           | 16                    | 16.0625
  3280.305(e)(2)        | strap base metal at least 0.016 in at the floor            | wind=II                       | floor-strapped strap-base-metal               | [in_i]           | 0.016                 | 0.0159
  3280.305(e)(2)        | strap base metal at least 0.016 in at the roof             | wind=III                      | roof-strapped strap-base-metal                | [in_i]           | 0.016                 | 0.0159
  3280.305(f)(1)        | no notch or hole in the middle third of a stud             | -                             | walls-framed middle-third                     | 1                | 0                     | 1
  3280.305(g)(5)        | joist holes at least 2 in from the edge                    | -                             | floor-piped hole-to-edge                      | [in_i]           | 2                     | 1.9375
  3280.305(g)(5)        | no notch in the middle third of a joist                    | -                             | floor-piped notches-middle-third              | 1                | 0                     | 1
  3280.305(g)(6)        | bottom board withstands 48 inch-pounds                     | -                             | bottom-laid puncture-resistance               | [in_i].[lbf_av]  | 48                    | 47.9
  3280.305(h)           | metal roof penetrations backed by 5/16 in                  | roofing=metal                 | underlaid metal-backing                       | [in_i]           | 0.3125                | 0.25
  3280.504(a)           | ceiling retarder at most 1 perm in zone 2                  | thermal=2                     | ceiling-hung retarder                         | [perm_us]        | 1; 0.06               | 1.1
  3280.504(a)           | ceiling retarder at most 1 perm in zone 3                  | thermal=3                     | ceiling-hung retarder                         | [perm_us]        | 1                     | 1.1
  3280.504(b)(1)        | wall retarder on the living side at most 1 perm            | -                             | walls-insulated retarder                      | [perm_us]        | 1                     | 1.1
  3280.504(b)(2)        | covering and sheathing outside at least 5 perms            | wall_retarder=outside-open    | walls-insulated outside-perm                  | [perm_us]        | 5                     | 4.9
  3280.504(d)           | at least 1 in of clear air at the eave                     | -                             | attic-insulated eave-gap                      | [in_i]           | 1                     | 0.9375
  3280.506(b)           | wall cavities are insulated without voids                  | -                             | walls-insulated voids                         | 1                | 0                     | 1
  3280.506(c)           | storm or insulating glass in zone 3                        | thermal=3                     | windows-set glazing                           | -                | storm; insulating     | single
  3280.612(a)           | water piping holds at least 15 min                         | -                             | water-tested time                             | min              | 15                    | 14.9
  3280.612(b)(1)        | drains hold water at least 15 min                          | -                             | drains-tested-open time                       | min              | 15                    | 14.9
  3280.612(b)(2)        | drains hold 2 in of water by air                           | dwv_test=air                  | drains-tested-set air-pressure                | [in_i'H2O]       | 2                     | 1.9
  3280.612(b)(3)        | drains hold the flood at least 15 min                      | dwv_test=flood                | drains-tested-set time                        | min              | 15                    | 14.9
  3280.612(c)           | no fixture leaks or drains slowly                          | -                             | fixtures-tested leaks-or-slow                 | 1                | 0                     | 1
  3280.612(d)           | the shower pan holds at least 15 min                       | -                             | pan-tested time                               | min              | 15                    | 14.9
  3280.705              | no concealed gas joints                                    | -                             | gas-run concealed-joints                      | 1                | 0                     | 1
  3280.705              | no copper gas tubing inside walls, floors or roofs         | gas_tubing=copper             | gas-run concealed-copper                      | 1                | 0                     | 1
  3280.705              | gas shutoff within 3 ft                                    | -                             | appliances-connected shutoff-distance         | [ft_i]           | 3                     | 3.1
  3280.705              | gas shutoff of a cooking appliance within 6 ft             | -                             | appliances-connected cooking-shutoff-distance | [ft_i]           | 6                     | 6.1
  3280.705(h)(1)        | strike barrier at least 0.058 in                           | gas_tubing=csst               | gas-run strike-barrier                        | [in_i]           | 0.058                 | 0.0579
  3280.705(l)(7)        | gas hangers at most 4 ft apart                             | -                             | gas-run hanger-spacing                        | [ft_i]           | 4                     | 4.1
  3280.705(l)(8)(i)     | gas piping holds at least 3 psi                            | -                             | gas-piping-tested start-pressure              | [psi]            | 3                     | 2.9
  3280.705(l)(8)(i)     | gas piping holds at least 10 min                           | -                             | gas-piping-tested time                        | min              | 10                    | 9.9
  3280.705(l)(8)(i)     | the gas gauge reads to 0.1 psi                             | -                             | gas-piping-tested gauge-resolution            | [psi]            | 0.1; 0.05             | 0.2
  3280.705(l)(8)(ii)    | appliances hold 10 to 14 in of water                       | -                             | gas-appliances-tested pressure                | [in_i'H2O]       | 10; 14                | 9.9; 14.1
  3280.705(l)(8)(ii)    | no joint bubbles                                           | -                             | gas-appliances-tested bubbles                 | 1                | 0                     | 1
  3280.801(e)           | no aluminum branch conductors                              | -                             | wired aluminum-branches                       | 1                | 0                     | 1
  3280.810(a)           | dielectric path A at 900 to 1079 V                         | -                             | dielectric-tested voltage                     | V                | 900; 1079             | 899; 1080
  3280.810(a)           | dielectric path A for 60 s                                 | -                             | dielectric-tested time                        | s                | 60                    | 59
  3280.810(a)           | dielectric path B at 1080 to 1250 V                        | dielectric=B                  | dielectric-tested voltage                     | V                | 1080; 1250            | 1079; 1251
  3280.810(a)           | dielectric path B for 1 s                                  | dielectric=B                  | dielectric-tested time                        | s                | 1                     | 0.9
  3280.810(b)           | continuity is proved                                       | -                             | electric-proved continuity                    | -                | yes                   | no
  3280.810(b)           | polarity is proved                                         | -                             | electric-proved polarity                      | -                | yes                   | no
  3280.810(b)           | operation is proved                                        | -                             | electric-proved operation                     | -                | yes                   | no
  3280.815              | white and green are used right                             | -                             | wired white-and-green                         | -                | yes                   | no
  NEC 300.4(A)(1)       | bored holes at least 1-1/4 in from the edge                | -                             | wired edge-distance                           | [in_i]           | 1.25                  | 1.1875
  NEC 300.4(A)(2)       | no notch with wire and without a plate                     | -                             | wire-protected bare-notches                   | 1                | 0                     | 1
  NEC 300.4(A)          | plates at least 1/16 in                                    | -                             | wire-protected plate-thickness                | [in_i]           | 0.0625                | 0.0575
  3285.702              | continuity is proved after the crossovers                  | -                             | site-tested continuity                        | -                | yes                   | no
  3285.801(c)           | transit sheeting comes off before siding                   | -                             | end-walls-closed sheeting-removed             | -                | yes                   | no
  3285.801(f)           | a hinged roof has the agency's final inspection            | hinged_roof=yes               | roof-joined hinged-roof-inspected             | -                | yes                   | no
  3285.803(c)           | loose panels fastened at 6 in at edges                     | -                             | site-finished edge-spacing                    | [in_i]           | 6                     | 6.0625
  3285.803(c)           | loose panels fastened at 12 in in the field                | -                             | site-finished field-spacing                   | [in_i]           | 12                    | 12.0625
  3285.803(c)           | fasteners of loose panels at least 1-1/2 in long           | -                             | site-finished fastener-length                 | [in_i]           | 1.5                   | 1.4375
  3285.804(a)           | missing insulation is replaced before the bottom is closed | -                             | crossovers-joined insulation-replaced         | -                | yes                   | no
`;

/** Trade facts: common practice, no published source. Shown as such, never as a regulation. */
export const PRACTICE = `
  practice | an R-11 batt fills a 2x4 wall                       | stud=2x4          | walls-insulated batt                  | -      | R-11  | R-19; R-13
  practice | an R-19 batt fills a 2x6 wall                       | stud=2x6          | walls-insulated batt                  | -      | R-19  | R-11; R-21
  practice | floor straps are 26 gauge                           | -                 | floor-strapped strap-gauge            | 1      | 26    | 28; 24
  practice | floor straps are 1-1/2 in wide                      | -                 | floor-strapped strap-width            | [in_i] | 1.5   | 1.4375
  practice | at least seven nails above the floor line           | -                 | floor-strapped nails-above            | 1      | 7     | 6
  practice | at least seven nails below the floor line           | -                 | floor-strapped nails-below            | 1      | 7     | 6
  practice | studs are straight and finger-jointed               | -                 | walls-framed straight-studs           | -      | yes   | no
  practice | openings are blocked all round and strapped         | -                 | openings-blocked blocked-and-strapped | -      | yes   | no
  practice | openings are square to 1/8 in                       | -                 | openings-blocked diagonals            | [in_i] | 0.125 | 0.1875
  practice | every box is fixed between studs                    | -                 | boxes-set fixed-between-studs         | -      | yes   | no
  practice | a sleeve guards wire where it turns up the wall     | -                 | wire-protected sleeves                | -      | yes   | no
  practice | every home has an air barrier on every outside wall | wind=I sections=1 | wrapped every-wall                    | -      | yes   | no
  practice | every window opens, shuts and locks                 | -                 | windows-set opens                     | -      | yes   | no
  practice | the gasket is whole when shipped                    | -                 | road-checked gasket-whole             | -      | yes   | no
  practice | the gasket is whole when delivered                  | -                 | delivery-checked gasket-whole         | -      | yes   | no
  practice | lag screws are 6 in long in zone I                  | -                 | floor-lagged lag-length               | [in_i] | 6     | 5.5
  practice | lag screws stand at about 45 degrees                | -                 | floor-lagged angle                    | deg    | 45    | 30; 60
  practice | lag screws at most 36 in apart from each half       | -                 | floor-lagged side-spacing             | [in_i] | 36    | 36.5
  derived  | the two sides alternate at 18 in, half of 36        | -                 | floor-lagged combined-spacing         | [in_i] | 18    | 18.5
`;

export type Figure = {
  readonly section: string;
  readonly about: string;
  readonly design: Design;
  readonly operation: string;
  readonly characteristic: string;
  readonly unit: string | null;
  readonly meets: readonly string[];
  readonly misses: readonly string[];
};

export const figuresOf = (table: string): readonly Figure[] =>
  table
    .split('\n')
    .filter((line) => line.trim() !== '')
    .map((line) => figureOf(line.split(' | ').map((cell) => cell.trim())));

const figureOf = (cells: readonly string[]): Figure => {
  const cell = (at: number): string => cells[at] ?? '';
  const [operation = '', characteristic = ''] = cell(3).split(' ');
  return {
    section: cell(0),
    about: cell(1),
    design:
      cell(2) === '-'
        ? {}
        : Object.fromEntries(
            cell(2)
              .split(' ')
              .map((pair) => pair.split('=')),
          ),
    operation,
    characteristic,
    unit: cell(4) === '-' ? null : cell(4),
    meets: cell(5).split('; '),
    misses: cell(6).split('; '),
  };
};
