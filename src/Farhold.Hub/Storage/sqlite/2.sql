-- A phone or a desk, known by its key (docs/decisions/keys-and-grants.md).
create table device(
  thumb text primary key,                                      -- SHA-256 of the key, 64 hexadecimal digits
  key blob not null,                                           -- a point of P-256, uncompressed: 65 bytes
  device text not null unique,                                 -- as it names itself in the ids of entries
  name text not null,
  role text not null check (role in ('carer', 'coordinator', 'adviser', 'instructor', 'owner')),
  team text not null,
  enrolled integer not null,                                   -- milliseconds since 1970, hub's clock, as all times here
  confirmed integer,                                           -- null: a person has still to compare its digits
  revoked integer
) strict, without rowid;

-- Whoever holds the code may enrol one device, once.
create table invitation(
  hash blob primary key,                                       -- SHA-256 of the code
  role text not null,
  team text not null,
  name text not null,                                          -- for whom
  made integer not null,
  made_by text not null,
  until integer not null,
  beforehand integer not null,                                 -- 1: confirmed beforehand, nobody has to compare digits
  used integer,
  withdrawn integer
) strict, without rowid;

-- To which team a casualty belongs: that of the device which brought it first.
create table belongs(
  casualty text primary key references casualty(id),
  team text not null
) strict, without rowid;

-- Devices that may see a casualty without being of its team's desk.
create table allowed(
  casualty text not null references casualty(id),
  thumb text not null,
  since integer not null,
  by text not null,
  primary key (casualty, thumb)
) strict, without rowid;

-- A link for a receiving clinician.
create table share(
  id text primary key,
  casualty text not null references casualty(id),
  secret blob not null,                                        -- SHA-256 of it
  code blob,                                                   -- SHA-256 of what is told by voice; null: none is asked for
  wrong integer not null,                                      -- codes that did not fit, so far
  made integer not null,
  made_by text not null,
  until integer not null,
  ended integer,
  opened integer not null,                                     -- how often
  last_opened integer
) strict, without rowid;

-- What a side has said it holds and the hub lacks: a doubt about the record until the lines are here.
create table said(
  casualty text not null references casualty(id),
  thumb text not null,                                         -- who said so
  head blob not null,
  at integer not null,
  primary key (casualty, thumb)
) strict, without rowid;

-- When a device last exchanged lines of a casualty, to the minute.
create table heard(
  casualty text not null references casualty(id),
  thumb text not null,
  at integer not null,
  primary key (casualty, thumb)
) strict, without rowid;

-- A sender's signature over what it holds of a casualty, its own lines among it: it vouches for them.
create table seal(
  casualty text not null references casualty(id),
  thumb text not null,
  device text not null,
  number integer not null,                                     -- its own lines up to here
  head blob not null,                                          -- the first line of the message
  base text not null,                                          -- what was signed (RFC 9421), the hash of the head in it
  signature blob not null,
  at integer not null,
  primary key (casualty, thumb)
) strict, without rowid;

-- Who did what, each row chained to the one before it. Never updated.
create table audit(
  position integer primary key,
  at integer not null,
  who text not null,
  what text not null,
  about text not null,
  hash blob not null                                           -- SHA-256 of the hash before it and of this row's words
) strict;
