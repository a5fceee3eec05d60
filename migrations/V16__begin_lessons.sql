-- What a new lesson of a series begins with: a document, of which all counts but its title and its lines. A series without
-- a row has none. Portable: H2 and PostgreSQL run the same text.
create table series_beginning (
    series_id varchar(16) not null primary key references series (id) on delete cascade,
    document  text        not null
);
