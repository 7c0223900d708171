//! Models that keep their rows: only what changed is told to the view, so that nothing is built anew under a finger.

use std::rc::Rc;

use slint::{Model, ModelRc, VecModel};

/// Makes a model hold these rows; touches only rows that differ.
pub(super) fn keep<T: Clone + PartialEq + 'static>(model: &VecModel<T>, rows: Vec<T>) {
    while model.row_count() > rows.len() {
        model.remove(model.row_count() - 1);
    }
    for (i, row) in rows.into_iter().enumerate() {
        match model.row_data(i) {
            None => model.push(row),
            Some(old) if old != row => model.set_row_data(i, row),
            Some(_) => {}
        }
    }
}

/// A model for a property.
pub(super) fn shared<T: Clone + 'static>(model: &Rc<VecModel<T>>) -> ModelRc<T> {
    ModelRc::from(Rc::clone(model) as Rc<dyn Model<Data = T>>)
}

/// A model of what never changes in place.
pub(super) fn fixed<T: Clone + 'static>(rows: impl IntoIterator<Item = T>) -> ModelRc<T> {
    ModelRc::new(VecModel::from(rows.into_iter().collect::<Vec<_>>()))
}

/// A count as Slint takes it; what does not fit is the largest.
pub(super) fn int(count: impl TryInto<i32>) -> i32 {
    count.try_into().unwrap_or(i32::MAX)
}
