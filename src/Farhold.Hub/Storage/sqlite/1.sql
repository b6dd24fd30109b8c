-- A casualty by the name that the hub gave it.
create table casualty(
  id text primary key,
  opened integer not null                                      -- milliseconds since 1970, hub's clock
) strict, without rowid;

-- By what a casualty is known: SHA-256 of the first line of a device, or an identity that an opening carries.
create table root(
  kind text not null check (kind in ('line', 'identity')),
  value text not null,
  casualty text not null references casualty(id),
  primary key (kind, value)
) strict, without rowid;

-- Never updated.
create table line(
  casualty text not null references casualty(id),
  position integer not null,                                   -- 1, 2, … for each casualty, in the order of commit
  device text not null,
  number integer not null,                                     -- '' and 0 where no id is legible
  hash blob not null,                                          -- SHA-256 of the line
  bytes blob not null,                                         -- the line, without its end
  arrived integer not null,                                    -- milliseconds since 1970, hub's clock
  via text not null,                                           -- who brought it
  primary key (casualty, position),
  unique (casualty, device, number, hash)
) strict, without rowid;
