farhold local protocol v1
issuer: 48041 78065 87821 45121
over: farhold-base 2.0.0
serial: 2
not-before: 2031-03-01T00:00:00Z
expires: 2032-11-01T00:00:00Z
signature: Z1HF91XA1ul0uT-5ox-Ekroyp67T6nzvimmfdTfA4XVKZqpHjMCcj_cP-FSYpuA4Gydg_YIMUgZvbCQnnli3rw
