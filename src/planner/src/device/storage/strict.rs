//! The strict copy: IndexedDB with strict durability. A change is in it when the browser says that it has reached the
//! disk; a killed browser does not lose it.

use super::Key;
use super::quick::Refused;
use futures_util::future::{Either, select};
use gloo_timers::future::TimeoutFuture;
use indexed_db_futures::database::Database;
use indexed_db_futures::error::{Error, OpenDbError};
use indexed_db_futures::prelude::*;
use indexed_db_futures::transaction::{TransactionDurability, TransactionMode, TransactionOptions};
use std::collections::BTreeMap;
use std::pin::pin;

const DATABASE: &str = "longcook";
const RECORDS: &str = "records";

/// Some browsers never answer in some states; the app then starts from the quick copy alone. Set by hand.
const PATIENCE_MILLISECONDS: u32 = 3_000;

impl From<Error> for Refused {
    fn from(error: Error) -> Self {
        let message = error.to_string();
        match error {
            Error::DomException(exception) => {
                let exception: web_sys::DomException = exception.into();
                Self::by_name(&exception.name(), message)
            }
            _ => Self::Other(message),
        }
    }
}

impl From<OpenDbError> for Refused {
    fn from(error: OpenDbError) -> Self {
        match error {
            OpenDbError::Base(error) => error.into(),
            other => Self::Other(other.to_string()),
        }
    }
}

/// Opens the database, making it on the first start.
pub(super) async fn open() -> Result<Database, Refused> {
    let opening = Database::open(DATABASE)
        .with_version(1_u8)
        .with_on_upgrade_needed(|_, database| {
            database.create_object_store(RECORDS).build()?;
            Ok(())
        })
        .build()?;
    let opening = pin!(async { opening.await.map_err(Refused::from) });
    match select(opening, TimeoutFuture::new(PATIENCE_MILLISECONDS)).await {
        Either::Left((opened, _)) => opened,
        Either::Right(_) => Err(Refused::Other(
            "the browser's database does not answer".to_owned(),
        )),
    }
}

/// Every record of this app, unopened.
pub(super) async fn read_all(database: &Database) -> Result<BTreeMap<Key, String>, Refused> {
    let transaction = database
        .transaction(RECORDS)
        .with_mode(TransactionMode::Readonly)
        .build()?;
    let store = transaction.object_store(RECORDS)?;
    let names = store.get_all_keys::<String>().primitive()?;
    let texts = store.get_all::<String>().primitive()?;
    let (names, texts) = (names.await?, texts.await?);
    Ok(names
        .zip(texts)
        .filter_map(|(name, text)| Some((name.ok()?.parse().ok()?, text.ok()?)))
        .collect())
}

/// Writes a record, or takes it out where there is no text. Done when it has reached the disk.
pub(super) async fn write(
    database: &Database,
    key: Key,
    text: Option<String>,
) -> Result<(), Refused> {
    let options = TransactionOptions::new().with_durability(TransactionDurability::Strict);
    let transaction = database
        .transaction(RECORDS)
        .with_mode(TransactionMode::Readwrite)
        .with_options(options)
        .build()?;
    let store = transaction.object_store(RECORDS)?;
    match text {
        Some(text) => {
            store
                .put(text)
                .with_key(key.to_string())
                .primitive()?
                .await?;
        }
        None => store.delete(key.to_string()).primitive()?.await?,
    }
    Ok(transaction.commit().await?)
}
