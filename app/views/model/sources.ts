/** What the model rests on, as the simulator's own files cite it. */
export interface Source {
  id: string
  text: string
  /** Cited from memory: not looked up while this was written. */
  memory?: true
  /** Words that stand together in one file of the simulator; a test holds it. */
  marks: string[]
}

export const SOURCES: Source[] = [
  {
    id: 'lame',
    text: 'R. G. Budynas, J. K. Nisbett: Shigley’s Mechanical Engineering Design, 9th ed., sections 3-14 and 3-16, eq. 3-56: Lamé’s thick-walled cylinders.',
    marks: ['thick-walled cylinders', 'Shigley', 'sections 3-14 and 3-16, eq. 3-56'],
  },
  {
    id: 'din7190',
    text: 'DIN 7190-1: interference fits, calculation and design; eq. 15.',
    marks: ['DIN 7190-1, eq. 15'],
  },
  {
    id: 'shelton',
    text: 'J. J. Shelton, 1986: dynamics of web tension control with velocity or torque control.',
    memory: true,
    marks: ['Shelton 1986', 'from memory'],
  },
  {
    id: 'shigley-collar',
    text: 'R. G. Budynas, J. K. Nisbett: Shigley’s Mechanical Engineering Design, 9th ed., eq. 8-1 to 8-6: power screw with collar.',
    marks: ['Budynas and Nisbett', '9th ed', '8-1 to 8-6'],
  },
  {
    id: 'shigley',
    text: 'R. G. Budynas, J. K. Nisbett: Shigley’s Mechanical Engineering Design, 9th ed., eq. 8-1, 8-2 and 8-5.',
    marks: ['Budynas and Nisbett', 'Shigley', '9th ed', '8-1, 8-2 and 8-5'],
  },
  {
    id: 'niemann',
    text: 'G. Niemann, H. Winter: Maschinenelemente, self-locking of gears.',
    memory: true,
    marks: ['Niemann and Winter', 'Maschinenelemente', 'from memory'],
  },
  {
    id: 'lugre',
    text: 'C. Canudas de Wit, H. Olsson, K. J. Åström, P. Lischinsky: IEEE Transactions on Automatic Control 40(3), 1995.',
    marks: ['Canudas de Wit, Olsson, Åström, Lischinsky', '40(3), 1995'],
  },
  {
    id: 'richardson',
    text: 'L. F. Richardson: Philosophical Transactions of the Royal Society A 210, 1911; as a stated uncertainty P. J. Roache: Journal of Fluids Engineering 116, 1994.',
    marks: ['Richardson, Phil. Trans. A 210, 1911', 'Roache, J. Fluids Eng. 116, 1994'],
  },
  {
    id: 'dupont',
    text: 'P. Dupont, V. Hayward, B. Armstrong, F. Altpeter: IEEE Transactions on Automatic Control 47(5), 2002.',
    marks: ['Dupont, Hayward, Armstrong, Altpeter', '47(5), 2002'],
  },
  { id: 'hess', text: 'D. P. Hess, A. Soom, 1990: the Stribeck curve.', marks: ['Hess and Soom (1990)'] },
  {
    id: 'mindlin',
    text: 'R. D. Mindlin, 1949: tangential stiffness of a contact grows with its normal force.',
    marks: ['Mindlin 1949'],
  },
  {
    id: 'hunt',
    text: 'K. H. Hunt, F. R. E. Crossley: Journal of Applied Mechanics 42, 1975.',
    marks: ['Hunt and Crossley', '42, 1975'],
  },
  { id: 'hertz', text: 'H. Hertz, 1882: contact of rounded elastic bodies.', marks: ['Hertz 1882'] },
  {
    id: 'johnson',
    text: 'K. L. Johnson: Contact Mechanics, 1985, ch. 4.',
    marks: ['Johnson, Contact Mechanics, 1985, ch. 4'],
  },
  {
    id: 'cundall',
    text: 'P. A. Cundall, O. D. L. Strack: Géotechnique 29, 1979.',
    marks: ['Cundall and Strack', 'Géotechnique 29, 1979'],
  },
  {
    id: 'howe',
    text: 'R. D. Howe, M. R. Cutkosky: International Journal of Robotics Research 15, 1996: limit surface of a soft contact.',
    marks: ['Howe and Cutkosky, Int. J. Robotics Research 15, 1996'],
  },
  {
    id: 'bowden',
    text: 'F. P. Bowden, D. Tabor: The Friction and Lubrication of Solids, 1950.',
    marks: ['Bowden and Tabor, The Friction and Lubrication of Solids, 1950'],
  },
  { id: 'iso80000', text: 'ISO 80000-3: standard acceleration of gravity.', marks: ['ISO 80000-3'] },
  { id: 'iec60028', text: 'IEC 60028: resistance of annealed copper.', marks: ['IEC 60028 annealed copper'] },
  {
    id: 'biagiotti',
    text: 'L. Biagiotti, C. Melchiorri: Trajectory Planning for Automatic Machines and Robots, 2008, double-S trajectory.',
    marks: ['Biagiotti and Melchiorri', '(2008)', 'double-S trajectory'],
  },
  { id: 'welford', text: 'B. P. Welford: Technometrics 4, 1962.', marks: ['Welford, Technometrics 4, 1962'] },
  {
    id: 'van-loan',
    text: 'C. F. Van Loan: IEEE Transactions on Automatic Control 23, 1978.',
    marks: ['Van Loan, IEEE TAC 23, 1978'],
  },
  {
    id: 'moler',
    text: 'C. Moler, C. F. Van Loan: SIAM Review 45, 2003, method 3.',
    marks: ['Moler and Van Loan, SIAM Review', '45, 2003, method 3'],
  },
  {
    id: 'parlett',
    text: 'B. N. Parlett, C. Reinsch: Numerische Mathematik 13, 1969.',
    marks: ['Parlett and Reinsch, Numerische Mathematik 13, 1969'],
  },
  {
    id: 'skogestad-postlethwaite',
    text: 'S. Skogestad, I. Postlethwaite: Multivariable Feedback Control, 2nd ed., ch. 4.',
    memory: true,
    marks: ['Skogestad and Postlethwaite, Multivariable Feedback Control, 2nd ed', 'from memory'],
  },
  {
    id: 'skogestad',
    text: 'S. Skogestad: Journal of Process Control 13, 2003, 291–309.',
    marks: ['Skogestad, J. Process Control 13 (2003) 291–309'],
  },
  {
    id: 'kessler',
    text: 'C. Kessler: Regelungstechnik 3, 1955, and 6, 1958.',
    memory: true,
    marks: ['Kessler, Regelungstechnik 3, 1955', 'Kessler, Regelungstechnik 6, 1958', 'both from memory'],
  },
  {
    id: 'leonhard',
    text: 'W. Leonhard: Control of Electrical Drives, 3rd ed.',
    memory: true,
    marks: ['Leonhard, Control of Electrical Drives, 3rd ed', 'from memory'],
  },
  {
    id: 'astrom',
    text: 'K. J. Åström, T. Hägglund: PID Controllers, 2nd ed., ch. 4.',
    memory: true,
    marks: ['Åström and Hägglund, PID Controllers', 'ch. 4 (from memory)'],
  },
  {
    id: 'gautier',
    text: 'M. Gautier, A. Janot, P.-O. Vandanjon: IEEE Transactions on Control Systems Technology 21(2), 2013.',
    marks: ['Gautier, Janot and Vandanjon, IEEE Trans. Control Systems Technology 21(2), 2013'],
  },
  { id: 'ljung', text: 'L. Ljung: System Identification, 1999.', marks: ['Ljung, System Identification, 1999'] },
  { id: 'white', text: 'H. White: Econometrica 48, 1980.', marks: ['White 1980'] },
  {
    id: 'liang-zeger',
    text: 'K.-Y. Liang, S. L. Zeger: Biometrika 73(1), 1986.',
    marks: ['Liang and Zeger, Biometrika 73(1), 1986'],
  },
  {
    id: 'welch',
    text: 'P. D. Welch: IEEE Transactions on Audio and Electroacoustics 15(2), 1967.',
    marks: ['blocks (1967)'],
  },
  { id: 'bendat-piersol', text: 'J. S. Bendat, A. G. Piersol: Random Data.', marks: ['Piersol, Random Data'] },
  {
    id: 'pintelon-schoukens',
    text: 'R. Pintelon, J. Schoukens: System Identification: A Frequency Domain Approach.',
    marks: ['System Identification: A Frequency Domain Approach'],
  },
  {
    id: 'clopper-pearson',
    text: 'C. J. Clopper, E. S. Pearson: Biometrika 26, 1934.',
    marks: ['Clopper and Pearson, The use of confidence or fiducial limits, 1934'],
  },
  {
    id: 'korn-graubard',
    text: 'E. L. Korn, B. I. Graubard: Survey Methodology 24, 1998.',
    marks: ['Korn and Graubard, Confidence intervals for proportions', 'Survey Methodology 24, 1998'],
  },
  {
    id: 'sobol',
    text: 'I. A. Antonov, V. M. Saleev: USSR Computational Mathematics and Mathematical Physics 19, 1979.',
    marks: ['Antonov and Saleev 1979'],
  },
  {
    id: 'owen',
    text: 'A. B. Owen: in Monte Carlo and Quasi-Monte Carlo Methods in Scientific Computing, 1995.',
    marks: ['Owen 1995'],
  },
  {
    id: 'joe-kuo',
    text: 'S. Joe, F. Y. Kuo: SIAM Journal on Scientific Computing 30, 2008.',
    marks: ['SIAM J. Sci. Comput. 30 (2008)'],
  },
  {
    id: 'qian',
    text: 'P. Z. G. Qian: Journal of the American Statistical Association 107, 2012.',
    marks: ['Qian, Sliced Latin hypercube designs, J. Am. Stat. Assoc. 107, 2012'],
  },
  {
    id: 'au-beck',
    text: 'S.-K. Au, J. L. Beck: Probabilistic Engineering Mechanics 16, 2001.',
    marks: ['Probab. Eng. Mech. 16, 2001'],
  },
  {
    id: 'papaioannou',
    text: 'I. Papaioannou and others: Probabilistic Engineering Mechanics 41, 2015.',
    marks: ['Probab. Eng. Mech. 41, 2015'],
  },
]
