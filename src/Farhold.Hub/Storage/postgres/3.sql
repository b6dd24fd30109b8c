-- The same as sqlite/3.sql: names, meanings and units are told there.
create table data_key(
  casualty text primary key references casualty(id),
  wrapped bytea not null
);

create table tombstone(
  root_hmac bytea primary key,
  casualty text not null,
  at bigint not null,
  by text not null,
  reason text not null
);

create table hub_key(
  print bytea primary key
);
