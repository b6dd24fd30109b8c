farhold local protocol v1
issuer: 48041 78065 87821 45121
over: farhold-base 2.0.0
serial: 1
not-before: 2031-01-10T00:00:00Z
expires: 2032-11-01T00:00:00Z
signature: SqyWvHp3hwPSEqst2jdvmO8xyHuDKlLDe_iIhKkGjzHLTCVX3QtGUiktVdKEaWcVZGpE5aXgZQqQhnDaCITCaw
