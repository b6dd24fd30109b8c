-- From here on line.bytes is sealed with its casualty's data key (docs/decisions/sealed-at-rest.md). The store seals what is there.
create table data_key(
  casualty text primary key references casualty(id),
  wrapped blob not null                                        -- sealed with the hub key
) strict, without rowid;

-- What was erased and never comes back: keyed hashes of all that it was known by, its id among it.
create table tombstone(
  root_hmac blob primary key,
  casualty text not null,
  at integer not null,
  by text not null,
  reason text not null
) strict, without rowid;

-- By which the hub key is recognised.
create table hub_key(
  print blob primary key
) strict, without rowid;

-- Pages of the file may hold lines as they were before: the store writes it anew, and sets 0.
pragma user_version = 1;
