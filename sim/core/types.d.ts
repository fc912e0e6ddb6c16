// Names that the core uses for numbers: the compiler to WebAssembly tells them apart, TypeScript need not.
type f64 = number
type i32 = number
type bool = boolean
