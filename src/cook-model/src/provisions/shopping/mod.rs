//! The list for the shop: worked out from the plan, changed where the person says so, in the units that shops sell.

mod aisle;
mod bill;
mod dry_goods;
mod fire;
mod household;
mod item;
mod list;
mod meat;
mod money;
mod notes;
mod shop_unit;
mod supplies;
mod working;

pub use aisle::Aisle;
pub use bill::{Bill, bill};
pub use item::{Item, NotAnItem};
pub use list::{Line, ShoppingList, shopping_list};
pub use money::{Money, Price, PricedBy};
pub use notes::{Extra, Purchase};
pub use shop_unit::{Pack, PackKind, ShopAmount, SoldBy};
pub use supplies::Supplies;
pub use working::{SaltPart, Working};
